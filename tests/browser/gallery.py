"""Pages that stay open for tests that only look: loaded once, and then held in any way.

A page that is turned is the same as one that was loaded across. One in other colours is loaded
anew: its links fade from colour to colour, and what is out of sight waits with that.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass, field

from playwright.sync_api import Browser, JSHandle, Page

from tests.browser.tablet import take_tablet

HUNG_AT_MOST = 8

KEEP = """() => {
  const parts = [document.head, ...document.querySelectorAll('.pc-page')];
  const read = () => parts.map(part => part.outerHTML).join();
  const kept = read();
  return {isAsItWas: () => read() === kept};
}"""
"""Remembers our part of a page; the theme's part follows the width by itself."""

SETTLE = """() => new Promise(done => {
  scrollTo(0, 0);
  requestAnimationFrame(() => requestAnimationFrame(() => done()));
})"""

Look = Callable[..., Page]
"""Shows a page by its address, held in some way and in some colours."""


@dataclass(frozen=True)
class Picture:
    """A page that stays open."""

    page: Page
    url: str
    kept: JSHandle

    def is_as_it_was(self) -> bool:
        """Return whether it is still the page that was loaded, with nothing in it changed."""
        return self.page.url == self.url and bool(self.kept.evaluate("kept => kept.isAsItWas()"))


@dataclass(frozen=True)
class Gallery:
    """The pages that are open, the one looked at last at the end."""

    browser: Browser
    complaints: list[str] = field(default_factory=list)
    """Errors of scripts, and addresses that a network was asked for."""
    hung: OrderedDict[tuple[str, str], Picture] = field(default_factory=OrderedDict)

    def show(self, url: str, viewport: dict[str, int], scheme: str) -> Picture:
        """Return a page at its top, loaded if it is not open."""
        picture = self.hung.pop((url, scheme), None) or self._load(url, scheme)
        self.hung[url, scheme] = picture
        if len(self.hung) > HUNG_AT_MOST:
            self.hung.popitem(last=False)[1].page.context.close()
        picture.page.set_viewport_size(viewport)
        picture.page.evaluate(SETTLE)
        return picture

    def take_down(self) -> None:
        """Close all pages, and forget what was said of them."""
        self.complaints.clear()
        while self.hung:
            self.hung.popitem()[1].page.context.close()

    def _load(self, url: str, scheme: str) -> Picture:
        page = take_tablet(self.browser, self.complaints, self.complaints, color_scheme=scheme)
        page.goto(url)
        return Picture(page, url, page.evaluate_handle(KEEP))
