"""Finished pages that are kept between builds."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from pullcord.pages.page import Heading, Page
from pullcord.site.shelf import shelf_for

LAMP = Page("procedures/lamp.md", "Lamp", "<p>lamp</p>", (Heading("look", "Look", 2),))
AROUND = ["the navigation", "the settings"]


@pytest.fixture
def overrides(tmp_path: Path) -> Path:
    """Return a folder of changes to the theme."""
    folder = tmp_path / "overrides"
    folder.mkdir()
    (folder / "main.html").write_text("main", encoding="utf-8")
    return folder


def laid(tmp_path: Path, page: Page, edit_uri: str | None, around: list[str]) -> bytes | None:
    """Return what of a page is laid down where one was kept."""
    path = tmp_path / "site" / "procedures" / "lamp.html"
    shelf = shelf_for(tmp_path / "cache", around, tmp_path / "overrides")
    return path.read_bytes() if shelf.lay(page, edit_uri, path) else None


def test_a_page_is_laid_down_as_it_came_out(tmp_path: Path, overrides: Path) -> None:
    """Byte for byte, whatever characters are in it."""
    shelf_for(tmp_path / "cache", AROUND, overrides).keep(LAMP, "lamp.yaml", "whole page \u2014 é")
    assert laid(tmp_path, LAMP, "lamp.yaml", AROUND) == "whole page \u2014 é".encode()


@pytest.mark.parametrize(
    ("page", "edit_uri", "around"),
    [
        pytest.param(replace(LAMP, html="<p>lamps</p>"), "lamp.yaml", AROUND, id="its HTML"),
        pytest.param(replace(LAMP, title="Lamps"), "lamp.yaml", AROUND, id="its title"),
        pytest.param(replace(LAMP, headings=()), "lamp.yaml", AROUND, id="its headings"),
        pytest.param(replace(LAMP, in_nav=True), "lamp.yaml", AROUND, id="its place"),
        pytest.param(replace(LAMP, src_uri="lamp.md"), "lamp.yaml", AROUND, id="its address"),
        pytest.param(LAMP, "other.yaml", AROUND, id="its file"),
        pytest.param(LAMP, "lamp.yaml", ["another navigation"], id="what stands around it"),
    ],
)
def test_another_page_is_not_taken_for_it(
    page: Page, edit_uri: str, around: list[str], tmp_path: Path, overrides: Path
) -> None:
    """Whatever has a say in a page tells it from the one that was kept."""
    shelf_for(tmp_path / "cache", AROUND, overrides).keep(LAMP, "lamp.yaml", "whole page")
    assert laid(tmp_path, page, edit_uri, around) is None


def test_a_change_to_the_theme_is_a_change_to_every_page(tmp_path: Path, overrides: Path) -> None:
    """What was laid out by another state of our templates is not taken."""
    shelf_for(tmp_path / "cache", AROUND, overrides).keep(LAMP, "lamp.yaml", "whole page")
    (overrides / "main.html").write_text("changed", encoding="utf-8")
    assert laid(tmp_path, LAMP, "lamp.yaml", AROUND) is None


def test_a_place_that_takes_nothing_has_the_page_made(tmp_path: Path, overrides: Path) -> None:
    """MkDocs then writes it itself, or says why it cannot."""
    shelf_for(tmp_path / "cache", AROUND, overrides).keep(LAMP, "lamp.yaml", "whole page")
    (tmp_path / "site").write_text("no folder", encoding="utf-8")
    assert laid(tmp_path, LAMP, "lamp.yaml", AROUND) is None
