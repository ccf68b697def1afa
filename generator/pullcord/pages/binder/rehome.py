"""Moving a page into a document with others: its ids made unlike theirs, its links led to them."""

from __future__ import annotations

import posixpath
from collections.abc import Callable, Iterator, Mapping
from html import escape
from html.parser import HTMLParser

_IDS = {"id", "for", "aria-labelledby", "aria-describedby", "aria-controls"}
_LINKS = {"href", "xlink:href"}
_SHARED = "pc-sign-"
"""Ids that begin so are the same drawing on every page, kept once."""


def rehome(html: str, uri: str, homes: Mapping[str, str]) -> str:
    """Return a page's HTML as part of one document.

    `uri` is the page's address, `homes` the id each page of the document has in it, by address.
    A link to a page that is not in the document becomes plain text, so that nothing leads nowhere.
    """
    writer = _Writer(uri, homes)
    writer.feed(html)
    writer.close()
    return "".join(writer.parts)


def home_of(uri: str) -> str:
    """Return the id a page has in the binder: `procedures/no-spark.html` is `no-spark`."""
    return posixpath.splitext(uri)[0].removeprefix("procedures/").replace("/", "-")


def inner_id(home: str, id_: str) -> str:
    """Return the id that something on a page gets; a page alone in its document keeps its own."""
    return f"{home}--{id_}" if home else id_


def stand_in(uri: str, at: str) -> str:
    """Return the page that stands for one the binder leaves out, as seen from the page `at`.

    For a machine's version of a procedure that is the procedure itself on the machine's own sheet
    and on the page of a job, and the sheet everywhere else.
    """
    folder, machine, name = (*uri.split("/"), "", "")[:3]
    sheet = f"{folder}/{machine}.html"
    is_asked_for = at == sheet or at.startswith("jobs/")
    return f"procedures/{name}" if is_asked_for else sheet


class _Writer(HTMLParser):
    def __init__(self, uri: str, homes: Mapping[str, str]) -> None:
        super().__init__(convert_charrefs=False)
        self._uri = uri
        self._homes = homes
        self.parts: list[str] = []
        self._links: list[str] = []
        """For each open `<a>`, the element it was written as."""
        self._drawings = 0
        """How many drawings are open: an element of HTML would end them."""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._write_tag(tag, attrs, ">")

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._write_tag(tag, attrs, "/>")

    def handle_endtag(self, tag: str) -> None:
        self._drawings -= tag == "svg"
        if tag == "a" and self._links:
            tag = self._links.pop()
        self.parts.append(f"</{tag}>")

    def handle_data(self, data: str) -> None:
        self.parts.append(data)

    def handle_entityref(self, name: str) -> None:
        self.parts.append(f"&{name};")

    def handle_charref(self, name: str) -> None:
        self.parts.append(f"&#{name};")

    def _write_tag(self, tag: str, attrs: list[tuple[str, str | None]], end: str) -> None:
        if tag == "img":
            return  # A picture lies in a file of its own; its name stands below it in words.
        moved = list(self._moved(attrs))
        self._drawings += tag == "svg" and end == ">"
        if tag == "a":
            is_lost = any(name == "href" and value is None for name, value in moved)
            tag = ("g" if self._drawings else "span") if is_lost else "a"
            self._links.append(tag)
        kept = ((name, value) for name, value in moved if not (name == "href" and value is None))
        words = (name if value is None else f'{name}="{escape(value)}"' for name, value in kept)
        # Names come in small letters; an HTML reader gives those of SVG their capitals back.
        self.parts.append(" ".join((f"<{tag}", *words)) + end)

    def _moved(self, attrs: list[tuple[str, str | None]]) -> Iterator[tuple[str, str | None]]:
        for name, value in attrs:
            move: Callable[[str], str | None] = self._link if name in _LINKS else str
            if name in _IDS:
                move = self._ids
            yield name, None if value is None else move(value)

    def _ids(self, value: str) -> str:
        return " ".join(self._id(one) for one in value.split())

    def _id(self, id_: str) -> str:
        return id_ if id_.startswith(_SHARED) else inner_id(self._homes[self._uri], id_)

    def _link(self, value: str) -> str | None:
        address, _, fragment = value.partition("#")
        target = posixpath.normpath(posixpath.join(posixpath.dirname(self._uri), address))
        page = target if address else self._uri
        if page not in self._homes:
            page = stand_in(page, self._uri)
            # A step has the same address on the general page; a sheet has no steps.
            fragment = fragment if page.startswith("procedures/") else ""
        if page not in self._homes:
            return None
        if not fragment:
            return f"#{self._homes[page]}"
        if fragment.startswith(_SHARED):
            return f"#{fragment}"
        return f"#{inner_id(self._homes[page], fragment)}"
