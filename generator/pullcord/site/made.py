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

from pullcord.drawing import chart_font_css
from pullcord.errors import FindingsError
from pullcord.finding import Severity
from pullcord.pages.address import HOME
from pullcord.pages.imprint import Dating, Imprint, dating, imprint
from pullcord.pages.kit import Kit, read_kit, render, template_folders
from pullcord.pages.page import Page
from pullcord.pages.settings import Settings
from pullcord.pages.site import pages_with
from pullcord.project import Project, load_project
from pullcord.rules.show import show_finding
from pullcord.site.assets import ADDRESS, Asset, joined, read_assets
from pullcord.site.bound import bound_files
from pullcord.site.find import Entry, index_assets
from pullcord.site.meter import read_meter
from pullcord.site.offline import find_flaws
from pullcord.site.origin import Options, folders_to_read, read_settings
from pullcord.site.photos import photo_assets
from pullcord.site.prints import paper_files
from pullcord.source.places import site_templates

_FONT = f"{ADDRESS}/font.css"
Found = Mapping[str, tuple[Entry, ...]]
"""What can be found, by the page it stands on, in the order of the pages."""


@dataclass(frozen=True)
class Frame:
    """What is printed around a page that is written by hand."""

    imprint: Imprint


@dataclass(frozen=True)
class ReadSite:
    """What a site is made from: everything that was read, without errors."""

    title: str
    kit: Kit
    project: Project
    assets: tuple[Asset, ...]
    """What goes into the site as it is, but for pictures."""
    notes: tuple[str, ...]
    """What the author should be told."""


def write_index(cache: Path | None, folder: Path, found: Found) -> None:
    """Write the search index into a new site. Raises OSError."""
    for asset in index_assets(chain.from_iterable(found.values()), cache):
        (folder / asset.uri).write_bytes(asset.content)


def _write_new_index(folder: Path, found: Found) -> None:
    write_index(None, folder, found)


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
    dated: Dating = str
    """Puts day and revision into a page that is laid out."""
    finish: Callable[[Path, Found], None] = _write_new_index
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
    site = read_site(config, options)
    pages = in_order(pages_with(site.kit, site.project))
    bound = bound_files(site.kit, site.title, pages, site.assets)
    return made_of(site, pages, {**bound, **paper_files(site.kit, site.project)})


def make_whole(config: Any, options: Options) -> Made:
    """Do the same with every file made."""
    return make_site(config, options).whole()


def read_site(config: Any, options: Options) -> ReadSite:
    """Read and check everything. Raises as `make_site`."""
    settings = read_settings(config.config_file_path, options, config.docs_dir)
    folders = folders_to_read(config.config_file_path, options)
    meter = read_meter(options.meter, Path(config.config_file_path))
    project = load_project(folders, meter=meter, replaces=options.replaces, base=Path.cwd())
    if any(finding.severity is Severity.ERROR for finding in project.findings):
        raise FindingsError(project.findings)
    return ReadSite(
        title=config.site_name,
        kit=read_kit(settings),
        project=project,
        assets=(*read_assets(template_folders(settings)), _font(settings)),
        notes=(*find_flaws(config), *map(show_finding, project.findings)),
    )


def made_of(
    site: ReadSite, pages: Iterable[Page], later: Mapping[str, Callable[[], bytes]]
) -> Made:
    """Return a site of some pages, and files that are made when they are called for."""
    frame = Frame(imprint(site.kit))
    return Made(
        pages={page.src_uri: page for page in in_order(pages)},
        head=render(site.kit, "sheet_foot", frame),
        foot=render(site.kit, "imprint", frame),
        assets=(*joined(site.assets, _shipped()), *photo_assets(site.project)),
        notes=site.notes,
        later=later,
        dated=dating(site.kit),
        finish=partial(write_index, site.kit.settings.cache_folder),
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
    return {_FONT, *(asset.uri for asset in read_assets((site_templates(),)))}


def _font(settings: Settings) -> Asset:
    return Asset(_FONT, chart_font_css(settings.cache_folder).encode())
