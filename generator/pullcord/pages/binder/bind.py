"""Binding pages into one HTML document with everything inside: styles, pictures, scripts, index."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from markupsafe import Markup

from pullcord.drawing.cache import keep
from pullcord.pages.binder.rehome import home_of, inner_id, rehome
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.page import Page, flat
from pullcord.pages.search.entry import Entry
from pullcord.pages.search.index import index_files
from pullcord.pages.search.sections import weighed_entries

TOP = "top"
"""The id of a page that is alone in its document."""
_SPRITE = re.compile(r'<svg class="pc-sprite".*?</symbol>\s*</svg>\n?', re.DOTALL)
_WALK = re.compile(
    r'<script type="application/json" id="pc-walk-data">.*?</template>\n?', re.DOTALL
)
"""What the guided walk is made of, which no document with several procedures runs."""
_SHEET_FOOT = re.compile(r"<style>[^<]*--pc-sheet-foot:.*?</style>\n?", re.DOTALL)
"""The foot of printed sheets. It names one procedure's revision and holds for a whole document."""
_DARK = re.compile(r'\[data-md-color-scheme="slate"\] (\{[^}]*\})')
_LIGHT = re.compile(r'\[data-md-color-scheme(="default")?\]')


@dataclass(frozen=True)
class Inside:
    """What a binder carries besides its pages."""

    styles: Sequence[str]
    scripts: Sequence[str]


@dataclass(frozen=True)
class BoundPage:
    """One page in the binder."""

    id: str
    title: str
    html: Markup


@dataclass(frozen=True)
class BinderView:
    """The whole document."""

    title: str
    language: str
    sprite: Markup
    styles: tuple[Markup, ...]
    imprint: Imprint
    scripts: tuple[Markup, ...]
    pages: tuple[BoundPage, ...]


def bind(kit: Kit, title: str, pages: Sequence[Page], inside: Inside) -> str:
    """Return the document. Pages keep their order; the first is where it opens."""
    folder = kit.settings.cache_folder
    homes = {_url(page): home_of(_url(page)) if len(pages) > 1 else "" for page in pages}
    index = index_files([entry for page in pages for entry in _entries(folder, page, homes)])
    view = BinderView(
        title=title,
        language="en",
        sprite=Markup(_sprites(pages)),  # noqa: S704 (finished pages)
        styles=tuple(_as_style(style) for style in inside.styles),
        imprint=imprint(kit),
        scripts=tuple(_as_script(script) for script in (*inside.scripts, *_in_order(index))),
        pages=tuple(_bound(folder, page, homes) for page in pages),
    )
    return str(render(kit, "binder", view))


def dark_by_tablet(css: str) -> str:
    """Return a stylesheet whose dark colours follow the tablet's own setting, without a script."""
    dark = _DARK.sub(r"@media screen and (prefers-color-scheme: dark) { :root \1 }", css)
    return _LIGHT.sub(":root", dark)


def _url(page: Page) -> str:
    return page.src_uri.removesuffix(".md") + ".html"


def _bound(folder: Path | None, page: Page, homes: Mapping[str, str]) -> BoundPage:
    url, html = _url(page), str(page.html)

    def made() -> bytes:
        bare = _SPRITE.sub("", html)
        among_others = _SHEET_FOOT.sub("", _WALK.sub("", bare))
        return rehome(among_others if homes[url] else bare, url, homes).encode()

    moved = keep(folder, ("bound page", url, repr(homes), html), made).decode()
    return BoundPage(homes[url] or TOP, page.title, Markup(moved))  # noqa: S704 (a finished page)


def _sprites(pages: Iterable[Page]) -> str:
    """Return the drawings of all pages, each once."""
    symbols: dict[str, None] = {}
    for page in pages:
        for sprite in _SPRITE.findall(page.html):
            symbols |= dict.fromkeys(re.findall(r"<symbol.*?</symbol>", sprite, re.DOTALL))
    return "".join(symbols)


def _entries(folder: Path | None, page: Page, homes: Mapping[str, str]) -> Iterable[Entry]:
    home = homes[_url(page)]
    headings = {heading.id: heading.title for heading in flat(page.headings)}
    for entry in weighed_entries(folder, page.title, headings, str(page.html)):
        fragment = entry.href.removeprefix("#")
        yield replace(entry, href=f"#{inner_id(home, fragment)}" if fragment else f"#{home or TOP}")


def _in_order(files: Mapping[str, str]) -> Iterable[str]:
    """Return the index's scripts; the one that says where to look comes first."""
    return (
        files[name] for name in sorted(files, key=lambda name: (name != "search-index.js", name))
    )


def _as_style(css: str) -> Markup:
    return Markup(css.replace("</", "<\\/"))  # noqa: S704 (our own stylesheet)


def _as_script(script: str) -> Markup:
    return Markup(script.replace("</", "<\\/"))  # noqa: S704 (our own script)
