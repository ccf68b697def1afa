"""Every page says how old it is and what goes before it."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from dataclasses import replace
from urllib.parse import quote_plus

import pytest

from pullcord.errors import PullcordError
from pullcord.pages.imprint import dating, imprint
from tests.pages.make import DIGEST, KIT, SETTINGS, example_pages, tree_of
from tests.pages.tree import Element

URIS = list(example_pages())


def finished(uri: str, **settings: str) -> Element:
    """Return a page as it stands in a site that is built with these settings."""
    kit = replace(KIT, settings=replace(SETTINGS, **settings))
    page = example_pages()[uri]
    return tree_of(replace(page, html=dating(kit)(page.html)))


def css_text(style: str) -> str:
    """Return the string in a style as a browser reads it (CSS Syntax Level 3, 4.3.7)."""
    (string,) = re.findall(r'"([^"]*)"', style)
    return re.sub(r"\\([0-9a-f]{1,6}) ", lambda match: chr(int(match[1], 16)), string)


@pytest.mark.parametrize("uri", URIS)
def test_every_page_carries_its_age_and_what_goes_before_it(uri: str) -> None:
    """Build date, revision, the procedure's own revision, the deferral, once a page."""
    (foot,) = finished(uri).all("pc-imprint")
    assert "Built on 2026-03-01" in foot.text
    assert "revision a1b2c3d" in foot.text
    assert (f"Procedure: revision {DIGEST}" in foot.text) == uri.startswith("procedures/")
    for line in KIT.standing.deferral:
        assert line in foot.text
    assert "data-search-exclude" in foot.attrs


@pytest.mark.parametrize("uri", URIS)
def test_every_sheet_carries_it_too(uri: str) -> None:
    """The foot of each printed sheet: date, revision, and what goes before the sheet."""
    (style,) = finished(uri).tags("style")
    printed = css_text(style.text)
    assert "Built on 2026-03-01" in printed
    assert "revision a1b2c3d" in printed
    assert KIT.words["sheet_deferral"] in printed


def test_an_unknown_revision_is_said_to_be_unknown() -> None:
    """A page never looks dated when nobody recorded the revision."""
    page = finished("index.md", revision="")
    assert "revision not recorded" in page.all("pc-imprint")[0].text
    assert "revision not recorded" in css_text(page.tags("style")[0].text)


def test_a_revision_is_text_wherever_it_stands() -> None:
    """It ends neither the style nor an element, whatever a project calls its revisions."""
    hostile = """</style><script>"\\'"""
    page = finished("index.md", revision=hostile)
    assert hostile in page.all("pc-imprint")[0].text
    assert hostile in css_text(page.tags("style")[0].text)
    assert page.tags("script") == []


@pytest.mark.parametrize("quote", [str, json.dumps, quote_plus], ids=["", "JSON", "a link"])
def test_the_day_stands_wherever_a_template_puts_it(quote: Callable[[str], str]) -> None:
    """A template of a project's own may quote it for JSON or for a link."""
    assert "2026-03-01" in dating(KIT)(quote(imprint(KIT).lines[0]))


def test_a_template_that_changes_the_day_is_told_of() -> None:
    """A page is never left with something else in the place of its age."""
    with pytest.raises(PullcordError, match="as they are"):
        dating(KIT)(imprint(KIT).lines[0].upper())


@pytest.mark.parametrize("pattern", ["Built in {value:.4}", "Built on {value!a:.2}"])
def test_a_text_that_cuts_the_day_is_told_of(pattern: str) -> None:
    """Likewise where words of a project's own do so."""
    kit = replace(KIT, words={**KIT.words, "imprint_built": pattern})
    with pytest.raises(PullcordError, match="as they are"):
        imprint(kit)
