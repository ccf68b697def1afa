"""The binder is opened alone, as a tablet's file manager hands it over."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.gallery import Look
from tests.browser.tablet import OpenTablet
from tests.browser.test_pages import WIDE

MEGABYTE = 1024 * 1024


@pytest.fixture(scope="module")
def binder(demo_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's binder, in a folder with nothing beside it."""
    return Path(shutil.copy(demo_site / "binder.html", tmp_path_factory.mktemp("alone")))


def fill(page: Page, words: str) -> None:
    """Type into the search."""
    page.get_by_role("searchbox").press_sequentially(words)


def test_binder_is_small_enough_to_open(demo_site: Path) -> None:
    """A procedure with its share of the sheets takes no more than a quarter of a megabyte."""
    procedures = len(list((demo_site / "procedures").glob("*.html")))
    assert (demo_site / "binder.html").stat().st_size <= procedures * MEGABYTE / 4


def test_walk_with_scripts_off(open_tablet: OpenTablet, binder: Path, requests: list[str]) -> None:
    """Symptom, step, answer and Back are links within the one file."""
    page = open_tablet(java_script_enabled=False)
    page.goto(f"file://{binder}")
    page.locator("#index a[href='#no-spark']").first.tap()
    page.locator("#no-spark a[href^='#no-spark--step-']").first.tap()
    step = page.url.partition("#")[2]
    expect(page.locator(f"[id='{step}']")).to_be_in_viewport()
    page.locator(f"[id='{step}'] .pc-ways a").first.tap()
    assert page.url.partition("#")[2] != step
    page.go_back()
    assert page.url.partition("#")[2] == step
    assert requests == []


def test_machine_sheets_are_in_it(open_tablet: OpenTablet, binder: Path) -> None:
    """A machine's sheet with its plugs stands beside the procedures."""
    page = open_tablet(java_script_enabled=False)
    page.goto(f"file://{binder}#machines-damson")
    sheet = page.locator("#machines-damson")
    expect(sheet.locator("h1")).to_be_in_viewport()
    assert sheet.locator("svg").count() > 0


def test_search_leads_to_a_step(open_tablet: OpenTablet, binder: Path, requests: list[str]) -> None:
    """Typing finds a step in the same file; a tap goes there."""
    page = open_tablet()
    page.goto(f"file://{binder}")
    fill(page, "stop wire")
    hit = page.locator("a.pc-hit-link").first
    expect(hit).to_be_visible()
    hit.tap()
    anchor = page.url.partition("#")[2]
    expect(page.locator(f"[id='{anchor}']")).to_be_in_viewport()
    assert requests == []


@pytest.mark.parametrize(("scheme", "light"), [("light", True), ("dark", False)])
def test_colours_follow_the_tablet(look: Look, binder: Path, scheme: str, light: bool) -> None:
    """Light and dark need no script and no theme."""
    page = look(f"file://{binder}", scheme=scheme)
    colour = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert (colour == "rgb(255, 255, 255)") is light


def test_nothing_is_wider_than_the_tablet(look: Look, binder: Path) -> None:
    """Only a chart in its own frame is slid sideways."""
    page = look(f"file://{binder}")
    assert page.evaluate(WIDE) <= 0


def test_one_procedure_alone_is_walked(
    open_tablet: OpenTablet, demo_site: Path, tmp_path: Path, requests: list[str]
) -> None:
    """The file of one procedure shows its first step, with nothing beside it."""
    alone = shutil.copy(demo_site / "one-file" / "leaks-fuel.html", tmp_path / "leak.html")
    page = open_tablet()
    page.goto(f"file://{alone}")
    page.locator(".pc-first a[href^='#step-']").first.tap()
    step = page.url.partition("#")[2]
    expect(page.locator(f"[id='{step}']")).to_be_in_viewport()
    assert requests == []
