"""Pages are found by their own words, whoever wrote them."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from pullcord.pages.search.entry import Entry
from pullcord.site.find import finding, index_assets


def page(**changed: object) -> SimpleNamespace:
    """Return a page as MkDocs hands it over."""
    below = SimpleNamespace(id="step-plug", title="Plug &amp; cap", children=[])
    top = SimpleNamespace(id="steps", title="Steps", children=[below])
    given = {
        "url": "procedures/no-spark.html",
        "title": "No spark &amp; no fire",
        "toc": [top],
        "meta": {},
        "content": '<h2 id="steps">Steps</h2><p id="step-plug">Look</p>',
    }
    return SimpleNamespace(**{**given, **changed})


def test_every_heading_is_found_under_its_page() -> None:
    """The page and each heading is one entry, in plain text, with the words it is told by."""
    found = finding(page())()
    assert [(entry.href, entry.title, entry.under) for entry in found] == [
        ("procedures/no-spark.html", "No spark & no fire", ""),
        ("procedures/no-spark.html#steps", "Steps", "No spark & no fire"),
        ("procedures/no-spark.html#step-plug", "Plug & cap", "No spark & no fire"),
    ]
    assert "look" in (found[-1].words or {})


def test_a_page_may_leave_itself_out() -> None:
    """An author who excludes a page from search is heard."""
    assert finding(page(meta={"search": {"exclude": True}}))() == ()


@pytest.mark.parametrize("count", [0, 1])
def test_there_is_always_a_place_to_begin(count: int) -> None:
    """Even a site without a word has the script that the search loads first."""
    entries = [Entry("a.html", "A", "", "word")] * count
    assert "assets/pullcord/search-index.js" in {asset.uri for asset in index_assets(entries)}
