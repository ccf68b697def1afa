"""The finder and the map, by a gloved thumb, with scripts and without."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from pullcord.analysis.finder import Index, index_signs, rank, telling_signs
from pullcord.pages.finder_page import sign_ids
from pullcord.pages.groups import in_order, name_groups
from pullcord.project import load_project
from pullcord.safety.urgent import is_urgent
from tests.browser.conftest import ROOT
from tests.browser.gallery import Look
from tests.browser.tablet import OpenTablet
from tests.browser.test_pages import LOW_CONTRAST, SMALL_TARGETS, SMALL_TEXT, WIDE, address
from tests.browser.test_walk_looks import BY_SCHEME, faults
from tests.pages.make import KIT

SMALL_TABLETS = {
    "upright": {"width": 768, "height": 1024},
    "across": {"width": 1024, "height": 768},
}
PAGES = {"home": "index.html", "list": "procedures.html", "finder": "finder.html"}

LIBRARY = load_project([ROOT / "procedures"]).library
NAMES = in_order(name_groups(KIT.words, LIBRARY))
INDEX: Index = index_signs(LIBRARY.procedures[name] for name in NAMES)
URGENT = {name for name in NAMES if is_urgent(LIBRARY.procedures[name])}
IDS = dict(zip(sign_ids(INDEX.signs), INDEX.signs, strict=True))
SHARED = [id_ for id_, sign in IDS.items() if len(sign.procedures) > 1]
OF_URGENT = next(id_ for id_, sign in IDS.items() if URGENT.intersection(sign.procedures))
PICKS = {
    "one": SHARED[:1],
    "two": SHARED[:2],
    "many": SHARED[::3],
    "dangerous-last": [*SHARED[:2], OF_URGENT],
}

TARGETS = """least => [...document.querySelectorAll('.pc-page button, .pc-page .pc-tile')]
  .map(button => button.getBoundingClientRect())
  .filter(box => box.height && (box.height < least || box.width < least)).length"""
TOUCHING = """() => {
  const boxes = [...document.querySelectorAll('.pc-signs .pc-toggle')]
    .map(button => button.getBoundingClientRect());
  return boxes.filter((one, place) => boxes.slice(place + 1).some(other =>
    one.left < other.right + 8 && other.left < one.right + 8 &&
    one.top < other.bottom + 8 && other.top < one.bottom + 8)).length;
}"""


def open_finder(site: Path, page: Page, *picked: str) -> Page:
    """Open the finder with some signs picked already."""
    page.goto(address(site, "finder.html", "+".join(picked)))
    return page


def found(page: Page) -> list[str | None]:
    """Return the names of the procedures shown, best first."""
    cards = page.locator(".pc-find").all()
    return [card.get_attribute("data-name") for card in cards]


def asked(page: Page) -> list[str | None]:
    """Return the signs that would tell these apart."""
    return [button.get_attribute("data-sign") for button in page.locator(".pc-tell button").all()]


def test_without_scripts_it_is_a_list_of_links(library_site: Path, open_tablet: OpenTablet) -> None:
    """Every sign in sight with its procedures, and one tap leads there."""
    page = open_tablet(java_script_enabled=False)
    open_finder(library_site, page)
    assert page.locator(".pc-signs > li").count() == len(INDEX.signs)
    assert page.locator("button.pc-toggle").count() == 0
    line = page.locator(f"#{SHARED[0]}")
    expect(line).to_be_visible()
    assert line.locator("a").count() == len(IDS[SHARED[0]].procedures)
    line.locator("a").first.tap()
    page.wait_for_url(f"**/procedures/{IDS[SHARED[0]].procedures[0]}.html")


@pytest.mark.parametrize("picked", PICKS.values(), ids=PICKS)
def test_what_fits_stands_as_the_measure_has_it(
    library_site: Path, portrait: Page, picked: list[str]
) -> None:
    """The same order as the analysis gives, dangerous first, with the same signs asked for."""
    open_finder(library_site, portrait)
    for id_ in picked:
        portrait.locator(f".pc-signs [data-sign='{id_}']").tap()
    signs = [IDS[id_] for id_ in picked]
    assert found(portrait) == [match.procedure for match in rank(INDEX, signs, URGENT)]
    ids = {sign: id_ for id_, sign in IDS.items()}
    assert asked(portrait) == [ids[sign] for sign in telling_signs(INDEX, signs, 3)]
    why = portrait.locator(".pc-find small").first.text_content() or ""
    assert any(sign.words in why for sign in signs)


def test_back_takes_a_pick_back_and_the_address_holds_it(
    library_site: Path, open_tablet: OpenTablet
) -> None:
    """One entry of the history a tap; a reload and another tablet show the same."""
    page = open_finder(library_site, open_tablet())
    for id_ in SHARED[:2]:
        page.locator(f".pc-signs [data-sign='{id_}']").tap()
    both = found(page)
    again = open_finder(library_site, open_tablet(), *page.url.partition("#")[2].split("+"))
    assert found(again) == both
    page.reload()
    assert found(page) == both
    page.go_back()
    pressed = page.locator(".pc-signs [aria-pressed=true]")
    assert [each.get_attribute("data-sign") for each in pressed.all()] == SHARED[:1]
    page.go_back()
    expect(page.locator(".pc-finds")).to_be_hidden()
    page.go_forward()
    assert set(found(page)) == set(IDS[SHARED[0]].procedures)


def test_a_second_tap_and_the_button_take_picks_back(library_site: Path, portrait: Page) -> None:
    """Nothing is picked, so nothing is shown."""
    open_finder(library_site, portrait, *SHARED[:2])
    portrait.locator(f".pc-signs [data-sign='{SHARED[0]}']").tap()
    assert set(found(portrait)) == set(IDS[SHARED[1]].procedures)
    portrait.locator("[data-finder=clear]").tap()
    expect(portrait.locator(".pc-finder-bar")).to_be_hidden()
    assert portrait.locator(".pc-signs [aria-pressed=true]").count() == 0


def test_the_bar_says_how_many_fit_and_leads_to_them(library_site: Path, portrait: Page) -> None:
    """It stays at the thumb while one picks."""
    open_finder(library_site, portrait, SHARED[0])
    portrait.evaluate("scrollTo(0, 0)")
    bar = portrait.locator(".pc-finder-bar")
    expect(bar).to_be_in_viewport()
    expect(bar.get_by_role("status")).to_have_text(
        f"{len(IDS[SHARED[0]].procedures)} procedures fit"
    )
    portrait.locator("[data-finder=show]").tap()
    expect(portrait.locator(".pc-finds h2")).to_be_in_viewport()
    expect(portrait.locator(".pc-find").first).to_be_in_viewport()


def test_what_is_written_in_the_address_does_no_harm(library_site: Path, portrait: Page) -> None:
    """A sign that is not there is passed over; what cannot be read as one, too."""
    for fragment in ("seen-nothing+by-seen", "<img src=x onerror=alert(1)>", "+", "%E0%A4%A"):
        portrait.goto("about:blank")
        portrait.goto(address(library_site, "finder.html", fragment))
        expect(portrait.locator(".pc-finds")).to_be_hidden()
        assert portrait.locator(".pc-toggle").count() == len(INDEX.signs)


@pytest.mark.parametrize("size", SMALL_TABLETS.values(), ids=SMALL_TABLETS)
@pytest.mark.parametrize("name", PAGES)
def test_a_thumb_in_a_glove_hits_it(
    library_site: Path, look: Look, name: str, size: dict[str, int]
) -> None:
    """Tiles and toggles 64 px and up, no two closer than 8 px, nothing slides sideways."""
    page = look(address(library_site, PAGES[name], SHARED[0] if name == "finder" else ""), size)
    assert page.evaluate(TARGETS, 64) == 0
    assert page.evaluate(TOUCHING) == 0
    assert page.evaluate(SMALL_TARGETS, 48) == []
    assert page.evaluate(WIDE) <= 0
    assert page.evaluate(TARGETS, 2000) > 0 or name == "list"


def test_the_choices_of_the_home_page_are_near(library_site: Path, look: Look) -> None:
    """On a small tablet: finder and what is dangerous on the first screen, all within three."""
    page = look(address(library_site, "index.html"), SMALL_TABLETS["upright"])
    expect(page.locator(".pc-first .pc-way")).to_be_in_viewport(ratio=1)
    for link in page.locator(".pc-urgent .pc-way").all():
        expect(link).to_be_in_viewport(ratio=1)
    assert page.locator(".pc-entry").count() == len(NAMES)
    last = page.locator(".pc-entry").last.bounding_box()
    assert last
    assert last["y"] + last["height"] < 3 * 1024


@pytest.mark.parametrize("scheme", BY_SCHEME)
@pytest.mark.parametrize("name", [*PAGES, "map"])
def test_it_can_be_read(library_site: Path, look: Look, name: str, scheme: str) -> None:
    """18 px and up, 7:1 and up (WCAG 2.2, 1.4.6), and AA by axe-core, with signs picked.

    In the dark, axe-core is asked about colours only: nothing else can differ.
    """
    picked = "+".join([*SHARED[:2], OF_URGENT]) if name == "finder" else ""
    page = look(address(library_site, PAGES.get(name, "map.html"), picked), scheme=scheme)
    assert page.evaluate(SMALL_TEXT, 18) == []
    assert page.evaluate(LOW_CONTRAST, 7) == []
    assert faults(page, BY_SCHEME[scheme]) == []


def test_the_map_slides_in_its_frame_and_leads_on(
    library_site: Path, open_tablet: OpenTablet
) -> None:
    """Type of 14.4 px and up; the page itself does not slide; a box leads to its procedure."""
    page = open_tablet(viewport=SMALL_TABLETS["upright"])
    page.goto(address(library_site, "map.html"))
    assert page.evaluate(WIDE) <= 0
    assert page.evaluate(SMALL_TARGETS, 48) == []
    scale = page.evaluate(
        """() => { const svg = document.querySelector('svg.pc-chart');
          return svg.getBoundingClientRect().width / svg.viewBox.baseVal.width; }"""
    )
    assert round(16 * scale, 1) >= 14.4
    boxes = page.locator("svg.pc-chart a")
    assert boxes.count() == len(NAMES)
    href = boxes.first.get_attribute("href")
    boxes.first.tap()
    page.wait_for_url(f"**/{href}")
