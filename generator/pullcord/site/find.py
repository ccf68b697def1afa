"""What the search finds: gathered page by page while the site is built, then written as scripts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from html import unescape
from typing import Any

from pullcord.pages.search.entry import Entry as Entry
from pullcord.pages.search.index import index_files
from pullcord.pages.search.sections import entries_of
from pullcord.site.assets import ADDRESS, Asset


def page_entries(page: Any) -> tuple[Entry, ...]:
    """Return what can be found on a page; `page` is MkDocs's. A page may leave itself out."""
    if page.meta.get("search", {}).get("exclude"):
        return ()
    titles = dict(_titles(page.toc))
    return tuple(entries_of(page.url, unescape(page.title), titles, page.content))


def index_assets(entries: Iterable[Entry]) -> Iterator[Asset]:
    """Yield the files of the index."""
    files: Mapping[str, str] = index_files(tuple(entries))
    for name, script in files.items():
        yield Asset(f"{ADDRESS}/{name}", script.encode())


def _titles(links: Iterable[Any]) -> Iterator[tuple[str, str]]:
    """Yield id and title of each entry of a table of contents, with those below it."""
    for link in links:
        yield link.id, unescape(link.title)
        yield from _titles(link.children)
