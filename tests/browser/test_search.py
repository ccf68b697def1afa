"""The search: what is typed is found as a person would expect, and does no harm."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from pullcord.pages.search.entry import Entry
from pullcord.pages.search.index import index_files
from pullcord.source.places import site_templates

HOSTILE = "<img src=x onerror=alert(1)> relay"
ENTRIES = [
    Entry("a.html", "Fault P-0301", "", "The coil on the left."),
    Entry("a.html#step-battery", "Charge the battery", "Fault P-0301", "It holds 12 V or more."),
    Entry("b.html", "Fitting E-12", "", "A coil is near. Mind the coil, the coil."),
    Entry("b.html#step-coil", "Coil", "Fitting E-12", "Measure."),
    Entry("c.html", HOSTILE, "<b>under</b>", "</script><script>window.harmed = 1</script>"),
]


@pytest.fixture
def page_with_search(portrait: Page, tmp_path: Path) -> Page:
    """A page in a folder with the search and an index of ENTRIES, opened."""
    return open_search(portrait, tmp_path, ENTRIES)


def open_search(page: Page, tmp_path: Path, entries: list[Entry]) -> Page:
    """Write a page with the search and an index into a folder, and open it."""
    assets = tmp_path / "assets" / "pullcord"
    assets.mkdir(parents=True)
    script = (site_templates() / "assets" / "search.js").read_text(encoding="utf-8")
    for name, text in {"search.js": script, **index_files(entries)}.items():
        (assets / name).write_text(text, encoding="utf-8")
    html = '<header data-pc-search></header><script src="assets/pullcord/search.js"></script>'
    for name in ("index.html", "a.html", "b.html", "c.html"):
        (tmp_path / name).write_text(f"<!doctype html>{html}", encoding="utf-8")
    page.goto(f"file://{tmp_path}/index.html")
    return page


def titles(page: Page, typed: str) -> list[str]:
    """Type and return the titles found, best first."""
    page.get_by_role("searchbox").fill(typed)
    page.wait_for_function("!document.querySelector('.pc-search-panel').hidden")
    return page.locator(".pc-hit-title").all_text_contents()


FINDS = {
    "12V": "Charge the battery",
    "12 v": "Charge the battery",
    "P0301": "Fault P-0301",
    "p-0301": "Fault P-0301",
    "E12": "Fitting E-12",
    "e-12": "Fitting E-12",
    "batt": "Charge the battery",
    "coil": "Coil",
}


@pytest.mark.parametrize(("typed", "first"), FINDS.items(), ids=FINDS)
def test_typed_finds(page_with_search: Page, typed: str, first: str) -> None:
    """Codes are found however they are spaced, beginnings are enough, titles come first."""
    assert titles(page_with_search, typed)[0] == first


def test_the_best_twenty_are_shown_in_order(portrait: Page, tmp_path: Path) -> None:
    """The first stand there before the others' files are read; one that counts more goes before."""
    plain = [Entry(f"{number}.html", f"Place {number}", "", "The relay.") for number in range(30)]
    page = open_search(portrait, tmp_path, [*plain, Entry("b.html", "Relay", "", "Listen.")])
    page.get_by_role("searchbox").fill("relay")
    shown = page.locator(".pc-hit-title")
    expect(shown).to_have_text(["Relay", *(f"Place {number}" for number in range(19))])


def test_what_is_shown_stays_when_the_rest_cannot_be_read(
    portrait: Page, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The first hits do not wait for the others' file, nor go with it; that it is gone is said."""
    monkeypatch.setattr("pullcord.pages.search.index.PLACES_A_FILE", 4)
    entries = [Entry(f"{number}.html", f"Relay {number}", "", "") for number in range(9)]
    page = open_search(portrait, tmp_path, entries)
    (tmp_path / "assets" / "pullcord" / "search-places-1.js").unlink()
    page.get_by_role("searchbox").fill("relay")
    expect(page.get_by_role("status")).to_contain_text("could not be read")
    shown = page.locator(".pc-hit-title")
    expect(shown).to_have_text([f"Relay {number}" for number in range(4)])


def test_nothing_found_is_said(page_with_search: Page) -> None:
    """A word that stands nowhere gives a sentence instead of an empty box."""
    assert titles(page_with_search, "zebra") == []
    expect(page_with_search.get_by_role("status")).to_contain_text("Nothing found")


def test_a_hit_names_its_page(page_with_search: Page) -> None:
    """Which procedure a step belongs to is part of the hit."""
    titles(page_with_search, "battery")
    expect(page_with_search.locator(".pc-hit-under").first).to_have_text("Fault P-0301")


def test_hostile_text_is_text(page_with_search: Page) -> None:
    """What looks like HTML is shown as it was written, and nothing runs."""
    assert titles(page_with_search, "relay") == [HOSTILE]
    assert page_with_search.locator(".pc-hit img").count() == 0
    assert page_with_search.evaluate("window.harmed") is None


def test_keys(page_with_search: Page) -> None:
    """Slash opens, arrows move, Enter goes, Escape leaves, as in the theme's own search."""
    page = page_with_search
    page.keyboard.press("/")
    box = page.get_by_role("searchbox")
    expect(box).to_be_focused()
    page.keyboard.type("coil")
    expect(page.locator(".pc-hit-link").first).to_be_visible()
    page.keyboard.press("ArrowDown")
    expect(page.locator(".pc-hit-link").first).to_be_focused()
    page.keyboard.press("ArrowUp")
    expect(box).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.locator(".pc-search-panel")).to_be_hidden()
    page.keyboard.press("/")
    page.keyboard.press("Enter")
    page.wait_for_url("**/b.html#step-coil")


def test_a_missing_index_is_said(page_with_search: Page, tmp_path: Path) -> None:
    """A folder copied by halves says so instead of finding nothing."""
    (tmp_path / "assets" / "pullcord" / "search-index.js").unlink()
    page_with_search.get_by_role("searchbox").fill("coil")
    expect(page_with_search.get_by_role("status")).to_contain_text("could not be read")


def test_a_missing_index_is_said_to_who_types_fast(page_with_search: Page, tmp_path: Path) -> None:
    """Who typed on while it was asked for is told too."""
    (tmp_path / "assets" / "pullcord" / "search-index.js").unlink()
    page_with_search.get_by_role("searchbox").evaluate(
        """box => { for (const typed of ['co', 'coil']) {
          box.value = typed;
          box.dispatchEvent(new InputEvent('input', { bubbles: true }));
        } }"""
    )
    expect(page_with_search.get_by_role("status")).to_contain_text("could not be read")
