"""What the walk keeps: through a reload, weeks, other walks, and where a browser keeps nothing."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from pullcord.model.target import Target
from pullcord.model.walk_record import WalkRecord
from pullcord.rules.document import locate, read_document
from tests.browser.tablet import PORTRAIT, OpenTablet
from tests.browser.walking import answer, begin, here, jump, leave, open_page, press, trail

NO_SPARK = "procedures/no-spark"
DAMSON = "machines/damson/no-spark"
QUINCE = "machines/quince/no-spark"
REFUSES = """Object.defineProperty(window, 'localStorage', {
  get() { throw new DOMException('The operation is insecure.', 'SecurityError'); }
});"""
"""What a browser does that lets a page keep nothing."""
FORGETS = "Storage.prototype.setItem = () => {};"
"""What a browser does that takes everything and keeps nothing."""


def walk_a_little(page: Page, site: Path, name: str) -> None:
    """Give three answers, which lead to the step `switches`."""
    open_page(page, site, name)
    begin(page)
    for said in ("dry, no smell", "", ""):
        answer(page, said)
    assert here(page) == "step-switches"


def kept(page: Page) -> dict[str, Any]:
    """Return all that the browser keeps for us, by key."""
    stored = page.evaluate("Object.entries(localStorage)")
    return {key: json.loads(value) for key, value in stored if key.startswith("pullcord.")}


def save(page: Page, folder: Path) -> Path:
    """Save the walk to a file."""
    leave(page)
    with page.expect_download() as download:
        page.locator('[data-deed="save"]').tap()
    path = folder / download.value.suggested_filename
    download.value.save_as(path)
    return path


def load(page: Page, path: Path) -> None:
    """Load a walk from a file."""
    page.locator(".pc-offer input[type=file]").set_input_files(path)


def offered(page: Page) -> str:
    """Return what the page says of a walk that was left."""
    return page.locator(".pc-offer__left").inner_text()


def test_a_reload_changes_nothing(library_site: Path, portrait: Page) -> None:
    """The same step, the same answers, and Back still goes back one step."""
    walk_a_little(portrait, library_site, NO_SPARK)
    before = trail(portrait)
    portrait.reload()
    assert here(portrait) == "step-switches"
    assert trail(portrait) == before
    assert portrait.locator(".pc-walk-note").inner_text() == ""
    portrait.go_back()
    portrait.locator("#step-cap-off.pc-here").wait_for()
    assert trail(portrait) == before[:2]


def test_three_weeks_later(demo_site: Path, portrait: Page) -> None:
    """Another tab, nothing but what the browser kept: home and page both know, and one goes on."""
    walk_a_little(portrait, demo_site, DAMSON)
    later = portrait.context.new_page()
    portrait.close()
    open_page(later, demo_site, "index")
    link = later.locator(".pc-unfinished .pc-way")
    assert "Turns over, no spark: Damson (LR-01), farm bike" in link.inner_text()
    assert "Step 4 How the switches stood" in link.inner_text()
    link.tap()
    assert "Step 4 How the switches stood" in offered(later)
    later.locator('[data-deed="on"]').tap()
    assert here(later) == "step-switches"
    assert len(trail(later)) == 3
    for step in ("cap-off", "make-ready", "smell-first"):
        later.go_back()
        later.locator(f"#step-{step}.pc-here").wait_for()
    later.go_back()
    later.locator("#before.pc-here").wait_for()


def test_several_walks_at_once(demo_site: Path, portrait: Page) -> None:
    """Each machine and procedure has its own; none is taken for another's."""
    walk_a_little(portrait, demo_site, DAMSON)
    open_page(portrait, demo_site, QUINCE)
    assert not portrait.locator(".pc-offer__left").is_visible()
    begin(portrait)
    answer(portrait, "dry, no smell")
    open_page(portrait, demo_site, NO_SPARK)
    assert not portrait.locator(".pc-offer__left").is_visible()
    open_page(portrait, demo_site, DAMSON)
    assert "Answers: 3" in offered(portrait)
    open_page(portrait, demo_site, "index")
    assert portrait.locator(".pc-unfinished .pc-way").count() == 2
    assert set(kept(portrait)) == {
        "pullcord.walk.no-spark.damson",
        "pullcord.walk.no-spark.quince",
    }


def test_starting_again_forgets_nothing(library_site: Path, portrait: Page, tmp_path: Path) -> None:
    """The answers of the first time stay in the record as a round of their own."""
    walk_a_little(portrait, library_site, NO_SPARK)
    open_page(portrait, library_site, NO_SPARK)
    begin(portrait)
    assert trail(portrait) == []
    answer(portrait, "dry, no smell")
    record = read(save(portrait, tmp_path))
    assert [len(each.answers) for each in record.rounds] == [3, 1]
    assert "3. Step 3 " in portrait.locator(".pc-leave textarea").input_value()


def test_a_remedy_is_proved_in_a_new_round(library_site: Path, portrait: Page) -> None:
    """From a cause back to the first step: what led to the cause is kept."""
    open_page(portrait, library_site, NO_SPARK)
    begin(portrait)
    jump(portrait, "cap-look")
    portrait.locator("#step-cap-look > .pc-ways > .pc-way--cause").first.tap()
    assert here(portrait).startswith("cause-")
    portrait.locator(".pc-here > .pc-ways > .pc-way--step").tap()
    assert here(portrait) == "step-smell-first"
    assert trail(portrait) == []
    rounds = kept(portrait)["pullcord.walk.no-spark"]["record"]["rounds"]
    assert [len(each["answers"]) for each in rounds] == [1, 0]
    assert rounds[0]["at"].startswith("cause ")


@pytest.mark.parametrize("browser_does", [REFUSES, FORGETS], ids=["refuses", "forgets"])
def test_a_browser_that_keeps_nothing_is_told_of(
    library_site: Path, browser: Browser, tmp_path: Path, browser_does: str
) -> None:
    """It says so from the first step, a reload does no harm, and a file keeps the walk.

    The theme's own scripts mind that they may not remember the colours; ours must not.
    """
    context = browser.new_context(viewport=PORTRAIT, has_touch=True)
    context.add_init_script(browser_does)
    page = context.new_page()
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(error.stack or ""))
    walk_a_little(page, library_site, NO_SPARK)
    assert "keeps nothing" in page.locator(".pc-walk-note").inner_text()
    page.reload()
    assert len(trail(page)) == 3
    path = save(page, tmp_path)
    assert "keeps nothing" in page.locator(".pc-leave__kept").inner_text()
    open_page(page, library_site, NO_SPARK)
    assert not page.locator(".pc-offer__left").is_visible()
    load(page, path)
    page.locator("#step-switches.pc-here").wait_for()
    assert len(trail(page)) == 3
    open_page(page, library_site, "index")
    assert page.locator(".pc-unfinished").count() == 0
    assert [stack for stack in errors if "assets/pullcord" in stack] == []
    context.close()


def test_a_browser_that_lost_it_is_told_of(library_site: Path, portrait: Page) -> None:
    """Cleared in mid walk: the open page still has it, puts it back and says so."""
    walk_a_little(portrait, library_site, NO_SPARK)
    portrait.evaluate("localStorage.clear()")
    portrait.reload()
    assert "lost" in portrait.locator(".pc-walk-note").inner_text()
    assert len(trail(portrait)) == 3
    assert len(kept(portrait)) == 1


def read(path: Path) -> WalkRecord:
    """Read a saved walk as any other part of Pullcord does."""
    document = read_document(path.name, path.read_bytes(), WalkRecord)
    assert locate(document, ()) == ()
    assert document.record
    return document.record


def test_a_saved_walk_is_read_by_the_model_and_by_another_tablet(
    demo_site: Path, open_tablet: OpenTablet, tmp_path: Path
) -> None:
    """Procedure, machine, place, answers, readings and warmth come through."""
    page = open_tablet()
    open_page(page, demo_site, DAMSON)
    begin(page)
    answer(page, "dry, no smell")
    jump(page, "source-coil")
    page.locator('.pc-pad__shop [data-key="10"]').tap()
    press(page, "250 ohm")
    page.locator(".pc-here .pc-fits").tap()
    path = save(page, tmp_path)
    assert path.name.startswith("walk-no-spark-damson-20")
    record = read(path)
    assert (record.walk, record.machine, record.shop_celsius) == ("no-spark", "damson", 10)
    assert record.last.at == Target("step", "trigger-coil")
    given = [(each.step, each.answer, each.reading) for each in record.last.answers]
    assert given == [
        ("smell-first", "dry, no smell", None),
        ("source-coil", "within", "250 ohm"),
    ]
    other = open_tablet()
    open_page(other, demo_site, DAMSON)
    load(other, path)
    other.locator("#step-trigger-coil.pc-here").wait_for()
    assert trail(other) == trail(page)


def test_the_text_can_be_copied(library_site: Path, portrait: Page) -> None:
    """Plain lines: what, when, every answer, where it was left."""
    walk_a_little(portrait, library_site, NO_SPARK)
    leave(portrait)
    text = portrait.locator(".pc-leave textarea").input_value()
    assert text.startswith("Turns over, no spark\nBegun 20")
    assert "\n1. Step 1 Smell for petrol: dry, no smell\n" in text
    assert "\nLeft at Step 4 How the switches stood, 20" in text
    portrait.locator('[data-deed="copy"]').tap()
    assert "copied" in portrait.locator(".pc-leave__kept").inner_text()


WRONG: dict[str, tuple[Callable[[dict[str, Any]], object], str]] = {
    "no record": (lambda record: {"a": 1}, "holds no walk"),
    "a list": (lambda record: [1], "holds no walk"),
    "of later days": (lambda record: {**record, "format": 2}, "holds no walk"),
    "without rounds": (lambda record: {**record, "rounds": []}, "holds no walk"),
    "of another machine": (lambda record: {**record, "machine": "quince"}, "quince"),
    "of another procedure": (lambda record: {**record, "walk": "wont-idle"}, "wont-idle"),
}


def test_a_file_that_does_not_fit_is_refused(
    library_site: Path, portrait: Page, tmp_path: Path
) -> None:
    """It says what the file is, and nothing is lost."""
    walk_a_little(portrait, library_site, NO_SPARK)
    good = json.loads(save(portrait, tmp_path).read_text(encoding="utf-8"))
    open_page(portrait, library_site, NO_SPARK)
    raws = [(json.dumps(change(good)).encode(), says) for change, says in WRONG.values()]
    for number, (raw, says) in enumerate([*raws, (b"\x00not json", "holds no walk")]):
        path = tmp_path / f"wrong-{number}.json"
        path.write_bytes(raw)
        # What the last file was answered with must not be taken for the answer to this one.
        portrait.locator(".pc-offer__note").evaluate("note => { note.textContent = ''; }")
        load(portrait, path)
        portrait.locator(".pc-offer__note", has_text=says).wait_for()
        assert here(portrait) == ""
    assert "Answers: 3" in offered(portrait)


CHANGED: dict[str, tuple[int, dict[str, str], str, int]] = {
    "all still there": (0, {}, "step-switches", 3),
    "an answer worded anew": (0, {"answer": "no smell at all"}, "step-smell-first", 0),
    "a step taken out": (1, {"step": "no-such-step"}, "step-make-ready", 1),
}
"""Which answer of the record is unlike the procedure's, how, and where one then is."""


@pytest.mark.parametrize("name", CHANGED)
def test_a_procedure_that_changed_is_walked_on_from_what_is_the_same(
    library_site: Path, portrait: Page, name: str
) -> None:
    """It says that the procedure changed, and goes as far as the answers still lead."""
    place, change, at, answers = CHANGED[name]
    walk_a_little(portrait, library_site, NO_SPARK)
    (entry,) = kept(portrait).items()
    key, value = entry
    value["record"]["revision"] = "000000000000"
    value["record"]["rounds"][0]["answers"][place] |= change
    portrait.evaluate(
        "([key, value]) => localStorage.setItem(key, value)", [key, json.dumps(value)]
    )
    open_page(portrait, library_site, NO_SPARK)
    assert "changed" in offered(portrait)
    portrait.locator('[data-deed="on"]').tap()
    assert here(portrait) == at
    assert len(trail(portrait)) == answers
    assert "changed" in portrait.locator(".pc-walk-note").inner_text()


def test_what_others_put_into_the_storage_does_no_harm(library_site: Path, portrait: Page) -> None:
    """All files of a tablet may share it: rubbish is passed over, words stay words."""
    walk_a_little(portrait, library_site, NO_SPARK)
    (entry,) = kept(portrait).items()
    key, good = entry
    hostile = "<img src=x onerror=window.harmed=1>"
    rubbish = {
        "pullcord.walk.a": "{",
        "pullcord.walk.b": "null",
        "pullcord.walk.c": json.dumps({**good, "page": "javascript:window.harmed=1"}),
        "pullcord.walk.d": json.dumps({**good, "record": {"walk": "x"}}),
        "pullcord.walk.e": json.dumps({**good, "home": "file:///elsewhere/index.html"}),
        key: json.dumps({**good, "title": hostile}),
    }
    portrait.evaluate(
        "all => Object.entries(all).forEach(([k, v]) => localStorage.setItem(k, v))", rubbish
    )
    open_page(portrait, library_site, "index")
    titles = portrait.locator(".pc-unfinished .pc-way__said").all_text_contents()
    assert titles == [hostile]
    assert portrait.evaluate("window.harmed") is None


def test_handing_over_is_kept(library_site: Path, portrait: Page) -> None:
    """An answer that leads to another procedure's page is in the record, and one can go on."""
    open_page(portrait, library_site, NO_SPARK)
    begin(portrait)
    portrait.locator(".pc-here .pc-way--procedure").first.tap()
    portrait.locator("#flowchart").wait_for()
    assert not portrait.url.startswith((library_site / f"{NO_SPARK}.html").as_uri())
    assert here(portrait) == ""
    (value,) = kept(portrait).values()
    last = value["record"]["rounds"][-1]
    assert last["at"].startswith("procedure ")
    assert [each["step"] for each in last["answers"]] == ["smell-first"]
    open_page(portrait, library_site, NO_SPARK)
    portrait.locator('[data-deed="on"]').tap()
    assert here(portrait) == "step-smell-first"
