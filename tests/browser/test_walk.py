"""The guided walk on a tablet: one step fills the screen, and every answer is a link."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page

from pullcord.model.procedure import Step
from tests.browser.tablet import OpenTablet
from tests.browser.walking import (
    HERE,
    WAYS,
    answer,
    begin,
    fitting,
    here,
    jump,
    leave,
    open_page,
    press,
    tap_key,
    trail,
    verdict,
)
from tests.library.table import Walk, answer_at, read_library, read_walks

NO_SPARK = "procedures/no-spark"
DAMSON = "machines/damson/no-spark"
LIBRARY = read_library().procedures
LARGE = ("no-spark", "wont-idle", "leaks-fuel")
WALKED = sorted({*LARGE, *list(LIBRARY)[::9]})
"""The large ones and one in nine; `tests/library` walks every way of all without a browser."""
LONGEST = {
    name: max(
        (walk for walk in read_walks() if walk.procedure == name and walk.end.startswith("cause")),
        key=lambda walk: len(walk.path),
    )
    for name in WALKED
}
"""The longest way to a cause."""

VISIBLE = """() => [...document.querySelectorAll('.pc-step, #before, #done, #causes, .pc-head')]
  .filter(each => each.getClientRects().length).map(each => each.id)"""


@pytest.mark.parametrize("name", LONGEST)
def test_a_known_fault_is_found(
    library_site: Path, portrait: Page, requests: list[str], name: str
) -> None:
    """Each step alone on the screen, a reading's answer offered; fewer causes at every step."""
    walk = LONGEST[name]
    open_page(portrait, library_site, f"procedures/{name}")
    begin(portrait)
    counts = []
    for step in walk.path:
        assert portrait.evaluate(VISIBLE) == [f"step-{step}"]
        assert re.search(r"\b(min|h)\b", portrait.locator(".pc-walk-left").inner_text())
        causes = portrait.locator(".pc-walk-causes li").all_text_contents()
        counts.append(len(causes))
        take(portrait, LIBRARY[name].steps[step], walk.shows.get(step, ""))
    cause = LIBRARY[name].causes[walk.end.removeprefix("cause ")].title
    assert here(portrait) == walk.end.replace(" ", "-")
    assert [line for line in causes if line.startswith(cause)]
    assert counts == sorted(counts, reverse=True)
    assert counts[-1] < counts[0]
    assert len(trail(portrait)) == len(walk.path)
    assert requests == []


def take(page: Page, step: Step, shown: str) -> None:
    """Answer a step as the machine shows it: a reading by the answer that the pad offers."""
    if step.reading is None:
        answer(page, shown if step.answers else "")
        return
    press(page, shown)
    assert verdict(page) in ("within", "outside", "answer", "either")
    fitting(page).first.tap()


@pytest.mark.parametrize("name", LARGE)
def test_a_known_fault_is_found_without_scripts(
    library_site: Path, open_tablet: OpenTablet, requests: list[str], name: str
) -> None:
    """The same way by the links alone."""
    walk = LONGEST[name]
    page = open_tablet(java_script_enabled=False)
    open_page(page, library_site, f"procedures/{name}")
    assert page.locator(".pc-offer").count() == 0
    page.locator(".pc-first .pc-way").tap()
    for step in walk.path:
        assert page.url.endswith(f"#step-{step}")
        follow(page, walk, step)
    assert page.url.endswith("#" + walk.end.replace(" ", "-"))
    assert requests == []


def follow(page: Page, walk: Walk, name: str) -> None:
    """Tap the answer's link of a step."""
    step = LIBRARY[walk.procedure].steps[name]
    ways = page.locator(f"#step-{name} > .pc-ways > .pc-way")
    if step.reading:
        key = answer_at(step, walk.shows[name])
        ways.and_(page.locator(f'[data-answer="{key}"]')).tap()
    else:
        ways.nth(list(step.answers or [""]).index(walk.shows.get(name, ""))).tap()


def test_a_step_reads_from_the_top(library_site: Path, tablet: Page) -> None:
    """Caution, instruction, picture, answers, in this order, with nothing of the site around."""
    open_page(tablet, library_site, NO_SPARK)
    begin(tablet)
    jump(tablet, "spin-look")
    tablet.wait_for_function("scrollY === 0 && document.activeElement.matches('.pc-here > h3')")
    assert not tablet.locator(".md-header").is_visible()
    order = tablet.evaluate(
        """() => [...document.querySelector('.pc-here').children].map(each => each.className)
          .filter(name => /boxes|instruction|walk-place|ways/.test(name))"""
    )
    assert order == ["pc-boxes", "pc-instruction", "pc-walk-place", "pc-ways"]
    assert tablet.locator(f"{HERE} .pc-box").first.is_visible()


def test_the_walk_begins_with_what_must_be_in_place(library_site: Path, portrait: Page) -> None:
    """Hazards, tools and what to wear come before the first step, also here."""
    open_page(portrait, library_site, NO_SPARK)
    portrait.locator('[data-deed="start"]').tap()
    assert portrait.evaluate(VISIBLE) == ["before"]
    assert portrait.locator("#hazards").is_visible()
    portrait.locator('[data-deed="back"]').tap()
    portrait.locator(".pc-head").wait_for()
    assert here(portrait) == ""


def test_back_takes_back_one_answer(library_site: Path, portrait: Page) -> None:
    """The browser's own Back and ours do the same; Forward gives the answer again."""
    open_page(portrait, library_site, NO_SPARK)
    begin(portrait)
    for said in ("dry, no smell", "", ""):
        answer(portrait, said)
    assert here(portrait) == "step-switches"
    assert trail(portrait)[0] == "Step 1 Smell for petrol: dry, no smell"
    portrait.go_back()
    portrait.locator("#step-cap-off.pc-here").wait_for()
    assert len(trail(portrait)) == 2
    portrait.locator('[data-deed="back"]').tap()
    portrait.locator("#step-make-ready.pc-here").wait_for()
    assert len(trail(portrait)) == 1
    portrait.go_forward()
    portrait.locator("#step-cap-off.pc-here").wait_for()
    assert len(trail(portrait)) == 2


def test_the_trail_leads_back_to_any_answer(library_site: Path, portrait: Page) -> None:
    """What was answered from there on is taken back; Back undoes the leap."""
    open_page(portrait, library_site, NO_SPARK)
    begin(portrait)
    for said in ("dry, no smell", "", "", "all stood at run"):
        answer(portrait, said)
    portrait.locator(".pc-walk-trail summary").tap()
    portrait.locator(".pc-walk-trail a").nth(1).tap()
    portrait.locator("#step-make-ready.pc-here").wait_for()
    assert len(trail(portrait)) == 1
    portrait.go_back()
    portrait.locator("#step-oil-level.pc-here").wait_for()
    assert len(trail(portrait)) == 4


VERDICTS = {
    "good": ("250 ohm", "within", ["within"]),
    "good in kohm": ("0.25 kohm", "within", ["within"]),
    "shorted": ("4 ohm", "outside", ["below"]),
    "high": ("400 ohm", "outside", ["above"]),
    "open": ("OL", "outside", ["open"]),
    "in doubt": ("201 ohm", "close", []),
    "swapped": ("-250 ohm", "minus", []),
}


def test_the_pad_judges_at_once(demo_site: Path, portrait: Page) -> None:
    """As soon as the unit is tapped; the answer is offered, and every other can still be taken."""
    open_page(portrait, demo_site, DAMSON)
    begin(portrait)
    found = {}
    for name, (shown, _, _) in VERDICTS.items():
        jump(portrait, "source-coil")
        press(portrait, shown)
        keys = fitting(portrait).evaluate_all("all => all.map(each => each.dataset.answer)")
        found[name] = (shown, verdict(portrait), keys)
        assert portrait.locator(".pc-pad__verdict b").inner_text().strip()
        jump(portrait, "cap-off")
    assert found == VERDICTS
    jump(portrait, "source-coil")
    press(portrait, "201 ohm")
    assert "Hold the probes together" in portrait.locator(".pc-pad__verdict").inner_text()
    answer(portrait, "Above the limits")
    assert trail(portrait)[-1].endswith("Above the limits (201 ohm)")


def test_a_number_is_typed_and_rubbed_out(demo_site: Path, portrait: Page) -> None:
    """Unit first or number first, a comma for a point; half a number is no verdict."""
    open_page(portrait, demo_site, DAMSON)
    begin(portrait)
    jump(portrait, "source-coil")
    shown = portrait.locator(".pc-pad__shown")
    for keys, text, kind in (
        (["2"], "2", "unit"),
        (["unit ohm"], "2 ohm", "outside"),
        (["5", "0"], "250 ohm", "within"),
        (["rub"], "25 ohm", "outside"),
        (["over"], "OL", "outside"),
        (["3"], "3", "unit"),
        (["rub", "rub"], "", "number"),
    ):
        for key in keys:
            tap_key(portrait, key)
        assert (shown.input_value(), verdict(portrait)) == (text, kind)
    for text, kind in (("0,25 kohm", "within"), ("250 Ω", "within"), ("o.l", "outside")):
        shown.fill(text)
        assert verdict(portrait) == kind


def test_the_shop_is_as_warm_on_every_page(demo_site: Path, portrait: Page) -> None:
    """Set once: a coil that passes in the cold fails at 20 °C, and the links say so too."""
    open_page(portrait, demo_site, DAMSON)
    begin(portrait)
    jump(portrait, "source-coil")
    press(portrait, "190 ohm")
    warm = portrait.locator(WAYS).all_inner_texts()
    assert verdict(portrait) == "outside"
    portrait.locator('.pc-pad__shop [data-key="-10"]').tap()
    assert verdict(portrait) == "within"
    assert portrait.locator(WAYS).all_inner_texts() != warm
    portrait.reload()
    assert portrait.locator('.pc-pad__shop [aria-pressed="true"]').inner_text() == "−10 °C"
    portrait.locator('[data-deed="end"]').tap()
    assert portrait.locator("#step-source-coil .pc-way").all_inner_texts()[0] in warm[0]


def test_the_chart_shows_the_way_so_far(library_site: Path, portrait: Page) -> None:
    """The box one stands at lies within the window; the boxes passed are marked."""
    open_page(portrait, library_site, NO_SPARK)
    begin(portrait)
    for said in ("dry, no smell", "", "", "all stood at run"):
        answer(portrait, said)
    marked = portrait.locator(".pc-walk-place .pc-passed").evaluate_all(
        "all => all.map(each => each.getAttribute('href'))"
    )
    assert marked
    assert (
        marked
        == ["#step-smell-first", "#step-make-ready", "#step-cap-off", "#step-switches"][
            -len(marked) :
        ]
    )
    assert portrait.evaluate("scrollY") == 0
    inside = portrait.evaluate(
        """() => {
          const box = document.querySelector('.pc-now').getBBox();
          const view = document.querySelector('.pc-walk-place svg').viewBox.baseVal;
          const middle = [box.x + box.width / 2 - view.x, box.y + box.height / 2 - view.y];
          return middle.every((at, i) => at > 0 && at < [view.width, view.height][i]);
        }"""
    )
    assert inside
    portrait.locator('[data-deed="end"]').tap()
    assert portrait.locator(".pc-passed, .pc-now").count() == 0
    assert portrait.locator("#flowchart svg.pc-chart .pc-node").first.is_visible()


def test_a_file_alone_is_walked_the_same(library_site: Path, portrait: Page) -> None:
    """The one file of a procedure, opened by itself: begin, answer, reload, go back."""
    open_page(portrait, library_site, "one-file/no-spark")
    begin(portrait)
    answer(portrait, "dry, no smell")
    portrait.reload()
    assert portrait.evaluate(VISIBLE) == ["step-make-ready"]
    assert portrait.locator(".pc-walk-place .pc-now").count() == 1
    portrait.locator('[data-deed="back"]').tap()
    portrait.locator("#step-smell-first.pc-here").wait_for()


def test_ending_the_walk_leaves_one_at_the_step(library_site: Path, portrait: Page) -> None:
    """The whole page is back, at the place where one was."""
    open_page(portrait, library_site, NO_SPARK)
    begin(portrait)
    answer(portrait, "dry, no smell")
    portrait.locator('[data-deed="end"]').tap()
    assert here(portrait) == ""
    assert portrait.locator(".md-header").is_visible()
    box = portrait.locator("#step-make-ready").bounding_box()
    assert box
    assert abs(box["y"]) < 120


def test_ending_the_walk_marks_the_step_one_is_at(library_site: Path, portrait: Page) -> None:
    """Not the one that a link of the trail led to before."""
    open_page(portrait, library_site, NO_SPARK)
    begin(portrait)
    answer(portrait, "dry, no smell")
    answer(portrait)
    portrait.locator(".pc-walk-trail summary").tap()
    portrait.locator(".pc-walk-trail a").nth(1).tap()
    portrait.locator("#step-make-ready.pc-here").wait_for()
    answer(portrait)
    last = here(portrait)
    portrait.locator('[data-deed="end"]').tap()
    assert last == "step-cap-off"
    portrait.locator(f"#{last}:target").wait_for()


def test_an_answer_opened_elsewhere_leaves_the_walk(library_site: Path, portrait: Page) -> None:
    """Whoever opens an answer in another tab has not given it here."""
    open_page(portrait, library_site, NO_SPARK)
    begin(portrait)
    at = here(portrait)
    with portrait.context.expect_page():
        portrait.locator(WAYS).first.click(modifiers=["Control"])
    assert here(portrait) == at
    assert trail(portrait) == []


def test_the_keyboard_alone_will_do(demo_site: Path, portrait: Page) -> None:
    """Tab and Enter begin, answer and leave; digits go into the pad; Escape closes the list."""
    open_page(portrait, demo_site, DAMSON)
    portrait.locator('[data-deed="start"]').focus()
    portrait.keyboard.press("Enter")
    reach(portrait, "Start here")
    portrait.keyboard.press("Enter")
    portrait.locator("#step-smell-first.pc-here").wait_for()
    reach(portrait, "dry, no smell")
    portrait.keyboard.press("Enter")
    portrait.locator("#step-make-ready.pc-here").wait_for()
    jump(portrait, "source-coil")
    while not portrait.evaluate("document.activeElement.matches('.pc-pad__shown')"):
        portrait.keyboard.press("Tab")
    portrait.keyboard.type("250 ohm")
    assert verdict(portrait) == "within"
    reach(portrait, "Leave it for today")
    portrait.keyboard.press("Enter")
    assert portrait.locator(".pc-leave").is_visible()
    portrait.keyboard.press("Escape")
    assert not portrait.locator(".pc-leave").is_visible()
    reach(portrait, "Back one step")
    portrait.keyboard.press("Enter")
    portrait.locator("#step-make-ready.pc-here").wait_for()


def reach(page: Page, text: str) -> None:
    """Press Tab until what has the focus says so; a chart's boxes must not lie between."""
    for _ in range(40):
        page.keyboard.press("Tab")
        focused = page.locator("a:focus, button:focus")
        if focused.count() and text in focused.inner_text():
            return
    raise AssertionError(f"{text} is not reached with Tab")


def test_leaving_prints_the_list_of_the_step(library_site: Path, open_tablet: OpenTablet) -> None:
    """The very list that stands at the step, with what was found; all else stays out."""
    page = open_tablet()
    page.add_init_script("window.print = () => { window.printed = true; };")
    open_page(page, library_site, NO_SPARK)
    begin(page)
    for said in ("dry, no smell", ""):
        answer(page, said)
    wanted = page.locator("#step-cap-off .pc-stop li").all_text_contents()
    assert wanted
    leave(page)
    assert page.locator(".pc-leave__list li").all_text_contents() == wanted
    page.locator('[data-deed="print"]').tap()
    assert page.evaluate("window.printed")
    page.emulate_media(media="print")
    shown = page.locator(".pc-paper").inner_text()
    assert [line for line in wanted if line.strip() not in shown] == []
    assert "1. Step 1 Smell for petrol: dry, no smell" in shown
    assert not page.locator("#step-cap-off").is_visible()
    assert page.locator(".pc-deferral").first.is_visible()
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    page.emulate_media(media="screen")
    assert not page.locator(".pc-paper").is_visible()
