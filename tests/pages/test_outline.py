"""The outline of a site names the pages that are then made."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from pullcord.pages.outline import other_outline, own_outline
from pullcord.pages.page import Page
from pullcord.pages.site import other_pages, own_pages
from pullcord.project import load_project
from tests.pages.make import KIT
from tests.site.shards.shed import write_project


def empty(pages: Iterable[Page]) -> list[Page]:
    """Return pages without what they say."""
    return [replace(page, html="", headings=(), source=None) for page in pages]


def test_the_outline_is_that_of_the_pages(tmp_path: Path) -> None:
    """Address, title, place in the navigation and in the search, in the same order."""
    folder = write_project(tmp_path / "shed").parent
    project = load_project([folder / name for name in ("procedures", "machines", "jobs")])
    assert project.jobs
    assert project.machines
    assert list(other_outline(KIT, project)) == empty(other_pages(KIT, project))
    assert list(own_outline(KIT, project)) == empty(own_pages(KIT, project))
