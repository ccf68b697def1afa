"""What the search finds: gathered page by page, then written as scripts."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from functools import partial
from html import unescape
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter

from pullcord.drawing.cache import keep_value
from pullcord.pages.search.entry import Entry as Entry
from pullcord.pages.search.index import index_files
from pullcord.pages.search.sections import weighed_entries
from pullcord.site.assets import ADDRESS, Asset

_FILES = TypeAdapter(dict[str, str])
Finding = Callable[[], tuple[Entry, ...]]
"""Gives what can be found on a page."""


def finding(page: Any, folder: Path | None = None) -> Finding:
    """Return what gives what can be found on a page; `page` is MkDocs's.

    A page may leave itself out. What was found is kept in the folder.
    """
    if page.meta.get("search", {}).get("exclude"):
        return tuple
    titles = dict(_titles(page.toc))
    return partial(_entries, folder, unescape(page.title), titles, page.content, page.url)


def _entries(
    folder: Path | None, title: str, titles: Mapping[str, str], html: str, url: str
) -> tuple[Entry, ...]:
    found = weighed_entries(folder, title, titles, html)
    return tuple(replace(entry, href=url + entry.href) for entry in found)


def index_assets(entries: Iterable[Entry], folder: Path | None = None) -> Iterator[Asset]:
    """Yield the files of the index, which are kept in the folder."""
    listed = tuple(entries)
    key = ("search index", repr(listed))
    files = keep_value(folder, key, _FILES, lambda: dict(index_files(listed)))
    for name, script in files.items():
        yield Asset(f"{ADDRESS}/{name}", script.encode())


def _titles(links: Iterable[Any]) -> Iterator[tuple[str, str]]:
    """Yield id and title of each entry of a table of contents, with those below it."""
    for link in links:
        yield link.id, unescape(link.title)
        yield from _titles(link.children)
