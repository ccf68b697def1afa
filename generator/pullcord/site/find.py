"""What the search finds: gathered page by page while the site is built, then written as scripts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from html import unescape
from pathlib import Path
from typing import Any

from pullcord.pages.search.entry import Entry as Entry
from pullcord.pages.search.index import index_files
from pullcord.pages.search.sections import weighed_entries
from pullcord.site.assets import ADDRESS, Asset


def page_entries(page: Any, folder: Path | None = None) -> tuple[Entry, ...]:
    """Return what can be found on a page; `page` is MkDocs's. A page may leave itself out.

    What was found is kept in the folder.
    """
    if page.meta.get("search", {}).get("exclude"):
        return ()
    titles = dict(_titles(page.toc))
    found = weighed_entries(folder, unescape(page.title), titles, page.content)
    return tuple(replace(entry, href=page.url + entry.href) for entry in found)


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
