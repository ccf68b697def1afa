"""The files of a site that need no other: the binder, and one for each procedure."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial
from pathlib import PurePosixPath

from pullcord.pages.address import BINDER, is_for_authors, one_file_uri
from pullcord.pages.binder.bind import Inside, bind, dark_by_tablet
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

    `assets` are those of the site. The binder holds each procedure once, not once more for every
    machine it fits: the machine's own values stand on its sheet, and the file stays small enough to
    be opened.
    """
    files = {asset.uri: asset.content for asset in assets}
    styles = _styles(kit, files)
    # The guided walk is for one procedure: in the binder its links are walked as they are.
    binder = Inside(styles, [files[f"{ADDRESS}/search.js"].decode()])
    alone = Inside(styles, [files[uri].decode() for uri in sorted(files) if uri.endswith(".js")])
    general = [page for page in pages if not _is_machines_version(page)]
    kept = sorted((page for page in general if not is_for_authors(page.src_uri)), key=_place)
    return {
        BINDER: partial(_bound, kit, title, kept, binder),
        **{
            one_file_uri(PurePosixPath(page.src_uri).stem): partial(
                _bound, kit, page.title, [page], alone
            )
            for page in general
            if page.src_uri.startswith("procedures/")
        },
    }


def _bound(kit: Kit, title: str, pages: Sequence[Page], inside: Inside) -> bytes:
    html = bind(kit, title, pages, inside)
    slipped_in = "".join(page.html for page in pages)
    return with_policy(html, inline_scripts(html, slipped_in)).encode()


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


def _is_machines_version(page: Page) -> bool:
    return page.src_uri.count("/") > 1
