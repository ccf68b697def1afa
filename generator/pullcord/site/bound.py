"""The files of a site that need no other: the binder, and one for each procedure."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial
from pathlib import PurePosixPath

from pullcord.drawing.cache import keep
from pullcord.pages.address import BINDER, is_for_authors, one_file_uri
from pullcord.pages.binder.bind import Inside, bind, dark_by_tablet
from pullcord.pages.imprint import dating
from pullcord.pages.kit import Kit, template_folders
from pullcord.pages.page import Page
from pullcord.site.assets import ADDRESS, Asset
from pullcord.site.policy import inline_scripts, with_policy

HOMES = ("index.md", "start.md")
"""Where the page of symptoms is, by whether the project has a home page of its own."""
_STYLES = ("font.css", "pullcord.css", "chart.css", "pin-chart.css", "plot.css", "job.css",
           "search.css", "walk.css", "finder.css")  # fmt: skip
"""What the pages need of our styles; the rest is for the theme."""


def bound_files(
    kit: Kit, title: str, pages: Sequence[Page], assets: Iterable[Asset]
) -> Mapping[str, Callable[[], bytes]]:
    """Return the binder and one file for each procedure, by address, each made when it is called.

    `assets` are those of the site.
    """
    files = tuple(assets)
    return {**binder_file(kit, title, pages, files), **single_files(kit, pages, files)}


def binder_file(
    kit: Kit, title: str, pages: Sequence[Page], assets: Iterable[Asset]
) -> Mapping[str, Callable[[], bytes]]:
    """Return the binder alone.

    It holds each procedure once, not once more for every machine it fits: the machine's own values
    stand on its sheet, and the file stays small enough to be opened.
    """
    files = {asset.uri: asset.content for asset in assets}
    # The guided walk is for one procedure: in the binder its links are walked as they are.
    inside = Inside(_styles(kit, files), [files[f"{ADDRESS}/search.js"].decode()])
    general = [page for page in pages if not is_machines_version(page)]
    kept = sorted((page for page in general if not is_for_authors(page.src_uri)), key=_place)
    return {BINDER: partial(_bound, kit, title, kept, inside)}


def single_files(
    kit: Kit, pages: Sequence[Page], assets: Iterable[Asset]
) -> Mapping[str, Callable[[], bytes]]:
    """Return one file for each procedure that has its general page among the pages."""
    files = {asset.uri: asset.content for asset in assets}
    scripts = [files[uri].decode() for uri in sorted(files) if uri.endswith(".js")]
    inside = Inside(_styles(kit, files), scripts)
    return {
        one_file_uri(PurePosixPath(page.src_uri).stem): partial(
            _bound, kit, page.title, [page], inside
        )
        for page in pages
        if page.src_uri.startswith("procedures/") and not is_machines_version(page)
    }


def _bound(kit: Kit, title: str, pages: Sequence[Page], inside: Inside) -> bytes:
    def made() -> bytes:
        html = dating(kit)(bind(kit, title, pages, inside))
        slipped_in = "".join(page.html for page in pages)
        return with_policy(html, inline_scripts(html, slipped_in)).encode()

    day = (kit.settings.build_date, kit.settings.revision)
    told = (text for page in pages for text in (page.src_uri, page.title, page.html))
    headings = repr([page.headings for page in pages])
    key = ("bound file", kit.digest, *day, title, *told, headings, *inside.styles, *inside.scripts)
    return keep(kit.settings.cache_folder, key, made)


def _styles(kit: Kit, files: Mapping[str, bytes]) -> list[str]:
    styles = [dark_by_tablet(files[f"{ADDRESS}/{name}"].decode()) for name in _STYLES]
    for folder in template_folders(kit.settings):
        path = folder / "binder" / "binder.css"
        if path.is_file():
            styles.append(path.read_text(encoding="utf-8"))
            break
    return styles


def _place(page: Page) -> tuple[bool, bool]:
    """Put the home page first and the procedures before whatever is looked up less."""
    return page.src_uri not in HOMES, not page.src_uri.startswith("procedures/")


def is_machines_version(page: Page) -> bool:
    """Say whether a page is a procedure's for one machine."""
    return page.src_uri.count("/") > 1
