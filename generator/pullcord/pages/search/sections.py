"""What can be found on a finished page: one entry for the page, one for each of its headings."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

from pydantic import TypeAdapter

from pullcord.drawing.cache import keep_value
from pullcord.pages.search.entry import Entry
from pullcord.pages.search.index import weights

_SILENT = {"script", "style", "svg", "template", "h1", "h2", "h3", "h4", "h5", "h6"}
"""Headings too: their words come with the titles."""
_EMPTY = {
    "area",
    "base",
    "br",
    "col",
    "embed",
    "hr",
    "img",
    "input",
    "link",
    "meta",
    "source",
    "wbr",
}
_LEFT_OUT = "data-search-exclude"
_DRAWING = re.compile(r"<svg\b.*?</svg\s*>", re.DOTALL)
_ENTRIES = TypeAdapter(tuple[Entry, ...])


def weighed_entries(
    folder: Path | None, title: str, headings: Mapping[str, str], html: str
) -> tuple[Entry, ...]:
    """Return the entries of a page as seen from itself, with the weights of their words.

    They are kept in the folder: a page is searched in the site, in the binder and alone.
    """

    def made() -> tuple[Entry, ...]:
        found = entries_of("", title, headings, html)
        return tuple(replace(entry, words=weights(entry)) for entry in found)

    return keep_value(folder, ("entries", title, repr([*headings.items()]), html), _ENTRIES, made)


def entries_of(url: str, title: str, headings: Mapping[str, str], html: str) -> Iterator[Entry]:
    """Yield the entries of a page.

    `headings` gives the title of every id the page's table of contents leads to. A text belongs to
    the last of these ids before it; what is marked `data-search-exclude` belongs to none.
    """
    reader = _Reader(frozenset(headings))
    # A drawing says nothing here, and has more tags than all the rest. Plain text is read faster
    # than escaped text, whose every slice is made anew.
    reader.feed(_DRAWING.sub(" ", str(html)))
    reader.close()
    yield Entry(url, title, "", reader.text_of(""))
    for id_, heading in headings.items():
        yield Entry(f"{url}#{id_}", heading, title, reader.text_of(id_))


class _Reader(HTMLParser):
    """Collects the text below each id."""

    def __init__(self, ids: frozenset[str]) -> None:
        super().__init__(convert_charrefs=True)
        self._ids = ids
        self._at = ""
        self._texts: dict[str, list[str]] = {}
        self._open: list[tuple[str, bool]] = []
        """The elements around the text, and whether each is left out."""

    def text_of(self, id_: str) -> str:
        return " ".join("".join(self._texts.get(id_, ())).split())

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if given.get("id") in self._ids:
            self._at = str(given["id"])
        self._texts.setdefault(self._at, []).append(" ")
        if tag not in _EMPTY:
            around = bool(self._open) and self._open[-1][1]
            self._open.append((tag, around or tag in _SILENT or _LEFT_OUT in given))

    def handle_endtag(self, tag: str) -> None:
        if any(name == tag for name, _ in self._open):
            while self._open.pop()[0] != tag:
                pass

    def handle_data(self, data: str) -> None:
        if not (self._open and self._open[-1][1]):
            self._texts.setdefault(self._at, []).append(data)
