"""What must be noticed of a page that stays open, so that no test hides a fault from the next."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser.gallery import HUNG_AT_MOST, Gallery
from tests.browser.tablet import LANDSCAPE, PORTRAIT

HTML = """<!doctype html><meta name=x content=y>
<div class=pc-page><p style="margin: 0">Rope</p></div>
<div style="height: 4000px"></div><img src="http://shed.test/a.png"><script>nothing()</script>"""

CHANGES = {
    "a word": "document.querySelector('p').append('s')",
    "an element": "document.querySelector('p').remove()",
    "a style": "document.querySelector('p').style.margin = ''",
    "a class": "document.querySelector('.pc-page').classList.add('x')",
    "the head": "document.head.append(document.createElement('style'))",
    "the address": "location.hash = 'x'",
}


@pytest.fixture
def own(browser: Browser) -> Iterator[Gallery]:
    """Give an empty gallery."""
    own = Gallery(browser)
    yield own
    own.take_down()


@pytest.fixture
def url(tmp_path: Path) -> str:
    """Give the address of a small page with faults."""
    (tmp_path / "page.html").write_text(HTML, encoding="utf-8")
    return (tmp_path / "page.html").as_uri()


@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES)
def test_a_change_is_noticed(own: Gallery, url: str, change: str) -> None:
    """Whatever a test does to a page; measuring it is no change."""
    picture = own.show(url, PORTRAIT, "light")
    picture.page.evaluate("document.body.getBoundingClientRect().height")
    assert picture.is_as_it_was()
    picture.page.evaluate(change)
    assert not picture.is_as_it_was()


def test_errors_and_requests_are_noted(own: Gallery, url: str) -> None:
    """Each once, when the page is loaded."""
    own.show(url, PORTRAIT, "light")
    own.show(url, LANDSCAPE, "light")
    assert sorted(own.complaints) == ["http://shed.test/a.png", "nothing is not defined"]


def test_a_page_is_shown_from_its_top_as_it_is_asked_for(own: Gallery, url: str) -> None:
    """One page for every scheme, turned and slid back."""
    seen = "[innerWidth, innerHeight, scrollY, matchMedia('(prefers-color-scheme: dark)').matches]"
    first = own.show(url, PORTRAIT, "light").page
    first.evaluate("scrollTo(0, 500)")
    assert own.show(url, LANDSCAPE, "light").page is first
    assert first.evaluate(seen) == [1180, 820, 0, False]
    assert own.show(url, PORTRAIT, "dark").page.evaluate(seen) == [820, 1180, 0, True]


def test_only_so_many_stay_open(own: Gallery, url: str) -> None:
    """The one that was looked at longest ago is closed."""
    pages = [own.show(f"{url}?{n}", PORTRAIT, "light").page for n in range(HUNG_AT_MOST + 1)]
    assert [page.is_closed() for page in pages] == [True] + [False] * HUNG_AT_MOST
