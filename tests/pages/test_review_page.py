"""The author's page of a procedure: the command's facts, out of a mechanic's way."""

from __future__ import annotations

import pytest

from pullcord.pages.kit import template_folders
from pullcord.site.assets import ADDRESS, Asset, read_assets
from pullcord.site.bound import bound_files
from tests.analysis.making import chain
from tests.pages.make import KIT, SETTINGS, example_pages, pages_of, tree_of

PAGES = pages_of(chain([5, 3, 2], [4, 1, 2]))
"""Of the run in `test_review.py`: 5.425 minutes on average, 60 % settled after 5, all after 7."""
REVIEW = tree_of(PAGES["authors/try-out.md"])


def test_it_says_what_the_command_says() -> None:
    """The figures worked out in `test_review.py`, in tables and sentences."""
    rows = [row.text for row in REVIEW.by_id("time").tags("tr")]
    assert rows[1:] == ["Minutes to a cause 5.4 5 7", "Checks to a cause 2 2 3"]
    assert len(REVIEW.by_id("causes").tags("tr")) == 5
    assert "Ask `k1` before `k0`: 5.4 -> 4.9 minutes on average." in REVIEW.by_id("order").text


def test_the_picture_is_told_in_words() -> None:
    """38 % are settled after 4 minutes, 60 % after 5, all after 7."""
    section = REVIEW.by_id("curve")
    told = "As written: 25 % after 4 min, 50 % after 5 min, 75 % after 7 min, 100 % after 7 min."
    (picture,) = section.tags("svg")
    assert told in section.text.replace("\N{NO-BREAK SPACE}", " ")
    assert told in picture.attrs["aria-label"].replace("\N{NO-BREAK SPACE}", " ")


def test_only_the_page_of_the_rules_leads_there() -> None:
    """No page a mechanic sees names it; the navigation and the search pass it over."""
    pages = example_pages()
    for name in ("no-spark", "wont-idle"):
        leading = [uri for uri, page in pages.items() if f"authors/{name}.html" in page.html]
        assert leading == ["rules.md"]
        page = pages[f"authors/{name}.md"]
        assert (page.in_nav, page.in_search) == (False, False)


@pytest.mark.parametrize("uri", ["binder.html", "one-file/no-spark.html"])
def test_what_is_carried_along_leaves_it_out(uri: str) -> None:
    """Neither the binder nor a procedure's own file holds the review, or leads to it."""
    assets = (*read_assets(template_folders(SETTINGS)), Asset(f"{ADDRESS}/font.css", b""))
    made = bound_files(KIT, "Shed", [*example_pages().values()], assets)
    html = made[uri]().decode()
    assert "No spark" in html
    assert "Review:" not in html
    assert "authors/" not in html


def test_same_procedure_same_page() -> None:
    """Made again, it is the same to the byte."""
    again = pages_of(chain([5, 3, 2], [4, 1, 2]))
    assert again["authors/try-out.md"] == PAGES["authors/try-out.md"]
