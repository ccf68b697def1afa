"""Everything Pullcord adds to a site, made in one go from the files of the procedures."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from pullcord.drawing import chart_font_css
from pullcord.errors import FindingsError
from pullcord.finding import Severity
from pullcord.pages.address import HOME
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import read_kit, render, template_folders
from pullcord.pages.page import Page
from pullcord.pages.settings import Settings
from pullcord.pages.site import pages_with
from pullcord.project import load_project
from pullcord.rules.show import show_finding
from pullcord.site.assets import ADDRESS, Asset, read_assets
from pullcord.site.bound import bound_files
from pullcord.site.meter import read_meter
from pullcord.site.offline import find_flaws
from pullcord.site.origin import Options, folders_to_read, read_settings
from pullcord.site.photos import photo_assets
from pullcord.site.prints import paper_files
from pullcord.source.places import site_templates


@dataclass(frozen=True)
class Foot:
    """What the foot's template prints."""

    imprint: Imprint


@dataclass(frozen=True)
class Made:
    """Finished pages and files."""

    pages: Mapping[str, Page]
    """By address, those that the navigation names first."""
    foot: str
    """What stands below every page that is written by hand: finished HTML."""
    assets: tuple[Asset, ...]
    notes: tuple[str, ...]
    """What the author should be told."""
    later: Mapping[str, Callable[[], bytes]] = field(default_factory=dict)
    """Files made when they are called for, by address: what is printed, and what is bound."""

    def whole(self) -> Made:
        """Return the same with every file made."""
        made = (Asset(uri, make()) for uri, make in self.later.items())
        return replace(self, assets=(*self.assets, *made), later={})

    def frame(self, html: str) -> str:
        """Return a page written by hand with the looks and the foot of ours."""
        return f'<div class="pc-page pc-page--own">{html}{self.foot}</div>'

    def put_first(self, items: list[Any]) -> None:
        """Sort the items of a navigation: our pages first, in their order, then the rest."""
        rank = {uri: place for place, uri in enumerate(self.pages)}
        items.sort(key=lambda i: rank.get(i.file.src_uri, len(rank)) if i.is_page else len(rank))


def make_site(config: Any, options: Options) -> Made:
    """Read, check and render everything; `config` is MkDocs's.

    Raises FindingsError with every error of every file, or another PullcordError when a template
    or the layout engine fails.
    """
    settings = read_settings(config.config_file_path, options, config.docs_dir)
    folders = folders_to_read(config.config_file_path, options)
    meter = read_meter(options.meter, Path(config.config_file_path))
    project = load_project(folders, meter=meter, replaces=options.replaces, base=Path.cwd())
    if any(finding.severity is Severity.ERROR for finding in project.findings):
        raise FindingsError(project.findings)
    kit = read_kit(settings)
    pages = sorted(pages_with(kit, project), key=lambda page: not page.in_nav)
    assets = (*read_assets(template_folders(settings)), _font(settings))
    bound = bound_files(kit, config.site_name, pages, assets)
    return Made(
        pages={page.src_uri: page for page in pages},
        foot=render(kit, "imprint", Foot(imprint(kit))),
        assets=(*assets, *photo_assets(project)),
        notes=(*find_flaws(config), *map(show_finding, project.findings)),
        later={**bound, **paper_files(kit, project)},
    )


def nothing_made(config: Any) -> Made:
    """Return a site with no more than a home page, for whoever waits for the first good build."""
    has_home = any((Path(config.docs_dir) / name).is_file() for name in (HOME, "README.md"))
    home = Page(HOME, config.site_name, "", (), in_nav=True)
    assets = read_assets((site_templates(),))
    return Made({} if has_home else {HOME: home}, "", assets, ())


def _font(settings: Settings) -> Asset:
    return Asset(f"{ADDRESS}/font.css", chart_font_css(settings.cache_folder).encode())
