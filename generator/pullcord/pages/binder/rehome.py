"""Moving a page into a document with others: its ids made unlike theirs, its links led to them."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterator, Mapping
from html import escape, unescape

_IDS = {"id", "for", "aria-labelledby", "aria-describedby", "aria-controls"}
_LINKS = {"href", "xlink:href"}
_RAW = {"script", "style"}
"""What stands in these is no HTML."""
_TAG = re.compile(
    r"""<(?P<end>/?)(?P<name>[A-Za-z][^\s/>]*)(?P<given>(?:[^>"']|"[^"]*"|'[^']*')*)>"""
)
_ATTRIBUTE = re.compile(
    r"""\s+(?P<name>[^\s=>"'/]+)(?:\s*=\s*(?P<value>"[^"]*"|'[^']*'|[^\s"'>]+))?"""
)
_FOR_INDEX = "data-search-exclude"
"""Says what the index leaves out. A binder's index is made before."""
_MAY_MOVE = re.compile("|".join(sorted({*_IDS, *_LINKS, _FOR_INDEX})), re.IGNORECASE)
_SHARED = "pc-sign-"
"""Ids that begin so are the same drawing on every page, kept once."""


def rehome(html: str, uri: str, homes: Mapping[str, str]) -> str:
    """Return a page's HTML as part of one document.

    `uri` is the page's address, `homes` the id each page of the document has in it, by address.
    A link to a page that is not in the document becomes plain text, so that nothing leads nowhere.
    """
    return "".join(_Writer(uri, homes).write(html))


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


class _Writer:
    """Writes a page anew, tag by tag. A page's tags are many, so one is looked into only if it may
    hold what is to be moved, and everything between them stays as it is."""

    def __init__(self, uri: str, homes: Mapping[str, str]) -> None:
        self._uri = uri
        self._homes = homes
        self._links: list[str] = []
        """For each open `<a>`, the element it was written as."""
        self._drawings = 0
        """How many drawings are open: an element of HTML would end them."""

    def write(self, html: str) -> Iterator[str]:
        at = 0
        while tag := _TAG.search(html, at):
            yield html[at : tag.start()]
            at, name = tag.end(), tag["name"].lower()
            yield self._end(tag, name) if tag["end"] else self._start(tag, name)
            if name in _RAW and not tag["end"]:
                end = html.find(f"</{name}", at)
                yield html[at:end] if end >= 0 else html[at:]
                at = end if end >= 0 else len(html)
        yield html[at:]

    def _end(self, tag: re.Match[str], name: str) -> str:
        self._drawings -= name == "svg"
        return f"</{self._links.pop()}>" if name == "a" and self._links else tag[0]

    def _start(self, tag: re.Match[str], name: str) -> str:
        if name == "img":
            return ""  # A picture lies in a file of its own; its name stands below it in words.
        self._drawings += name == "svg" and not tag[0].endswith("/>")
        lost: list[str] = []
        given = tag["given"]
        if _MAY_MOVE.search(given):
            given = _ATTRIBUTE.sub(lambda each: self._moved(each, lost), given)
        if name != "a":
            return f"<{tag['name']}{given}>"
        written = ("g" if self._drawings else "span") if lost else "a"
        self._links.append(written)
        return f"<{written}{given}>"

    def _moved(self, attribute: re.Match[str], lost: list[str]) -> str:
        """Return an attribute moved; a link that leads nowhere is noted as lost and left out."""
        name = attribute["name"].lower()
        if name == _FOR_INDEX:
            return ""
        if name not in _IDS | _LINKS or attribute["value"] is None:
            return attribute[0]
        value = unescape(attribute["value"].strip("\"'"))
        moved = self._link(value) if name in _LINKS else self._ids(value)
        if moved is None:
            lost.append(name)
            return ""
        return f' {attribute["name"]}="{escape(moved)}"'

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
