"""Finished pages kept between builds, so that the theme lays out again only what comes out anew.

A page is kept by all that has a say in it: what we made of it, what stands around it, the versions
of whoever lays it out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path

from pullcord.drawing.cache import find, put
from pullcord.pages.page import Page
from pullcord.source.files import files_below

LAID_OUT_BY = ("mkdocs", "mkdocs-material")
"""Whose templates and code stand around a page, beside the packages of every other entry."""


@dataclass(frozen=True)
class Shelf:
    """The pages kept for one state of everything that stands around them."""

    folder: Path
    """The cache."""
    state: str

    def lay(self, page: Page, edit_uri: str | None, path: Path) -> bool:
        """Write a page as it came out before; say whether that could be done."""
        kept = find(self.folder, self._key(page, edit_uri))
        if kept is None:
            return False
        with suppress(OSError):
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(kept)
            return True
        return False

    def keep(self, page: Page, edit_uri: str | None, output: str) -> None:
        """Keep a page as MkDocs is about to write it."""
        content = output.encode("utf-8", errors="xmlcharrefreplace")
        put(self.folder, self._key(page, edit_uri), content)

    def _key(self, page: Page, edit_uri: str | None) -> Iterator[str]:
        yield from ("finished page", self.state, page.src_uri, page.title, page.html)
        yield from (repr(page.headings), repr((edit_uri, page.in_nav)))


def shelf_for(folder: Path, around: Sequence[str], overrides: Path) -> Shelf:
    """Return what is kept for a state of everything around pages.

    `around` is what `surroundings` gave, `overrides` the folder of our changes to the theme.
    """
    versions = (f"{name} {version(name)}" for name in LAID_OUT_BY)
    ours = sorted(files_below(overrides))
    texts = (f"{path.relative_to(overrides)} {path.read_bytes()!r}" for path in ours)
    return Shelf(folder, sha256("\0".join((*around, *versions, *texts)).encode()).hexdigest())
