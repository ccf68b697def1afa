"""Everything Pullcord adds to a site, made in one go from the files of the procedures."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field, replace
from functools import partial
from itertools import chain
from pathlib import Path
from typing import Any

from pullcord.pages.address import HOME
from pullcord.pages.imprint import Imprint, dated, dating, imprint
from pullcord.pages.kit import render
from pullcord.pages.page import Page
from pullcord.pages.site import pages_with
from pullcord.site.assets import Asset, joined, read_assets
from pullcord.site.bound import bound_files
from pullcord.site.find import Entry, index_assets
from pullcord.site.helpers import cores_at_hand, make_ahead
from pullcord.site.origin import Options
from pullcord.site.photos import photo_assets
from pullcord.site.prints import paper_files
from pullcord.site.read import FONT, ReadSite, read_site
from pullcord.source.places import site_templates

Found = Mapping[str, tuple[Entry, ...]]
"""What can be found, by the page it stands on, in the order of the pages."""


@dataclass(frozen=True)
class Frame:
    """What is printed around a page that is written by hand."""

    imprint: Imprint


def write_index(folder: Path, found: Found, cache: Path | None = None) -> None:
    """Write the search index, which is kept in the cache, into a new site. Raises OSError."""
    for asset in index_assets(chain.from_iterable(found.values()), cache):
        (folder / asset.uri).write_bytes(asset.content)


@dataclass(frozen=True)
class Made:
    """Finished pages and files."""

    pages: Mapping[str, Page]
    """By address, those that the navigation names first."""
    head: str
    foot: str
    """What stands above and below every page that is written by hand: finished HTML."""
    assets: tuple[Asset, ...]
    notes: tuple[str, ...]
    """What the author should be told."""
    later: Mapping[str, Callable[[], bytes]] = field(default_factory=dict)
    """Files made when they are called for, by address: what is printed, and what is bound."""
    elsewhere: frozenset[str] = frozenset()
    """Addresses among `pages` that are known, and written by another build."""
    finish: Callable[[Path, Found], None] = write_index
    """What is left to be done in the new site's folder when all pages are written."""

    def whole(self) -> Made:
        """Return the same with every file made.

        Several at once, since the typesetting engine lets others work meanwhile.
        """
        with ThreadPoolExecutor(max_workers=os.cpu_count()) as workers:
            made = workers.map(lambda make: make(), self.later.values())
            added = tuple(map(Asset, self.later, made))
        return replace(self, assets=(*self.assets, *added), later={})

    def frame(self, html: str) -> str:
        """Return a page written by hand with the looks and the foot of ours."""
        return f'<div class="pc-page pc-page--own">{self.head}{html}{self.foot}</div>'

    def put_first(self, items: list[Any]) -> None:
        """Sort the items of a navigation: our pages first, in their order, then the rest."""
        rank = {uri: place for place, uri in enumerate(self.pages)}
        items.sort(key=lambda i: rank.get(i.file.src_uri, len(rank)) if i.is_page else len(rank))


def make_site(config: Any, options: Options) -> Made:
    """Read, check and render everything; `config` is MkDocs's.

    Raises FindingsError with every error of every file, or another PullcordError when a template
    or the layout engine fails.
    """
    return _make(read_site(config, options))


def make_whole(config: Any, options: Options) -> Made:
    """Do the same with every file made."""
    site = read_site(config, options)
    make_ahead(site, tuple(site.project.files), cores_at_hand())
    return _make(site).whole()


def _make(site: ReadSite) -> Made:
    pages = [dated(site.kit, page) for page in in_order(pages_with(site.kit, site.project))]
    bound = bound_files(site.kit, site.title, pages, site.assets)
    return made_of(site, pages, {**bound, **paper_files(site.kit, site.project)})


def made_of(
    site: ReadSite, pages: Iterable[Page], later: Mapping[str, Callable[[], bytes]]
) -> Made:
    """Return a site of some pages, and files that are made when they are called for."""
    frame, date = Frame(imprint(site.kit)), dating(site.kit)
    return Made(
        pages={page.src_uri: page for page in in_order(pages)},
        head=date(render(site.kit, "sheet_foot", frame)),
        foot=date(render(site.kit, "imprint", frame)),
        assets=(*joined(site.assets, _shipped()), *photo_assets(site.project)),
        notes=site.notes,
        later=later,
        finish=partial(write_index, cache=site.kit.settings.cache_folder),
    )


def in_order(pages: Iterable[Page]) -> list[Page]:
    """Put the pages that the navigation names first."""
    return sorted(pages, key=lambda page: not page.in_nav)


def nothing_made(config: Any) -> Made:
    """Return a site with no more than a home page, for whoever waits for the first good build."""
    has_home = any((Path(config.docs_dir) / name).is_file() for name in (HOME, "README.md"))
    home = Page(HOME, config.site_name, "", (), in_nav=True)
    assets = joined(read_assets((site_templates(),)), _shipped())
    return Made({} if has_home else {HOME: home}, "", "", tuple(assets), ())


def _shipped() -> set[str]:
    return {FONT, *(asset.uri for asset in read_assets((site_templates(),)))}
