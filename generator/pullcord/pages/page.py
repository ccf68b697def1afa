"""A finished page, ready for whoever writes the site."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from pydantic import TypeAdapter


@dataclass(frozen=True)
class Heading:
    """One entry of a page's table of contents."""

    id: str
    title: str
    level: int
    children: tuple[Heading, ...] = ()


def flat(headings: Iterable[Heading]) -> Iterable[Heading]:
    """Yield the headings with those below them, in reading order."""
    for heading in headings:
        yield heading
        yield from flat(heading.children)


@dataclass(frozen=True)
class PageLink:
    """A page that is worth knowing of."""

    title: str
    says: str
    href: str


@dataclass(frozen=True)
class Page:
    """One page of the site: its address, its inner HTML and what surrounds it."""

    src_uri: str
    """Address in MkDocs's terms, such as `procedures/no-spark.md`."""
    title: str
    html: str
    """The page's content: finished, escaped HTML."""
    headings: tuple[Heading, ...]
    source: Path | None = None
    """The file the page is made from, for the edit link."""
    in_nav: bool = False
    """Whether the navigation names it; only a few pages are, on every page."""
    in_search: bool = True
    """Whether its words are found; a machine's page of a procedure says what the general one says,
    and is found through it."""


PAGES = TypeAdapter(tuple[Page, ...])
"""Several pages, to be kept as JSON and read again."""
