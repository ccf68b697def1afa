"""Headings of a finished page in the terms of whoever writes the site."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cached_property
from typing import Any, Protocol, TypeVar

from markupsafe import escape

from pullcord.pages.page import Heading


class Link(Protocol):
    """An entry of a table of contents that may have entries below it."""

    children: list[Any]


AnyLink = TypeVar("AnyLink", bound=Link)


def link_tree(
    headings: Iterable[Heading], make: Callable[[str, str, int], AnyLink]
) -> list[AnyLink]:
    """Return the headings as links made from title, id and level; a title is HTML from here on."""
    links = []
    for heading in headings:
        link = make(as_html(heading.title), heading.id, heading.level)
        link.children = list(link_tree(heading.children, make))
        links.append(link)
    return links


def as_html(text: str) -> str:
    """Return text as HTML that shows it as it is."""
    return str(escape(text))


def anchor_ids(html: str) -> set[str]:
    """Return the ids that links may point at."""
    return set(re.findall(r'\sid="([^"]+)"', html))


class AnchorIds:
    """The same ids, looked for when the first link asks: hardly any page is asked."""

    def __init__(self, html: str) -> None:
        """Look for nothing yet."""
        self._html = html

    def __contains__(self, anchor: object) -> bool:
        """Say whether a link may point there."""
        return anchor in self._ids

    @cached_property
    def _ids(self) -> set[str]:
        return anchor_ids(self._html)
