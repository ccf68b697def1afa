"""What a site must be told so that it works with no network and no server.

The theme's stock settings ask a font host, a script host and the repository's host for things;
on a tablet in a shed each of those is a page that hangs.
"""

from __future__ import annotations

import logging
import re
from collections.abc import MutableMapping
from pathlib import Path
from typing import Any

from pullcord.errors import SiteError

FEATURES = ("content.action.edit", "navigation.prune", "navigation.top")
NEEDS_SERVER = ("navigation.instant",)
"""Beginnings of theme features that load pages by script, which no browser does from a folder."""
ASKS_NETWORK = ("analytics", "consent", "version")
"""Keys below `extra` with which the theme asks a server for something."""

SEARCH = "material/search"
"""The theme's search plugin. It makes its index anew on every page and needs a worker for it, which
no browser starts from a folder; ours takes its place."""

PALETTE = (
    {
        "media": "(prefers-color-scheme)",
        "toggle": {"icon": "material/brightness-auto", "name": "Colours: as the tablet is set"},
    },
    {
        "media": "(prefers-color-scheme: light)",
        "scheme": "default",
        "toggle": {"icon": "material/weather-sunny", "name": "Colours: light"},
    },
    {
        "media": "(prefers-color-scheme: dark)",
        "scheme": "slate",
        "toggle": {"icon": "material/weather-night", "name": "Colours: dark"},
    },
)
COLOURS = {"primary": "custom", "accent": "custom"}
"""The colours are those of our own stylesheet."""
FOR_SERVERS = {"404.html", "sitemap.xml"}
"""Files of the theme that only a public server has a use for."""
MARK = "assets/pullcord/mark.svg"
THEME_MARK = "assets/images/favicon.png"


def take_offline(config: Any, overrides: Path) -> None:
    """Change MkDocs's settings, `config`, so that nothing in the site asks a network or a server.

    `overrides` is the folder of our changes to the theme; a project's own go before it.
    Raises SiteError for another theme.
    """
    if config.theme.name != "material":
        raise SiteError("Pullcord needs MkDocs's theme `material`: write `theme: material`")
    config.use_directory_urls = False
    take_theme_offline(config.theme)
    take_extra_offline(config.extra)
    config.theme.dirs.insert(1 if config.theme.custom_dir else 0, str(overrides))
    if not config.site_url:
        # Both speak of addresses on a server; the compressed sitemap holds the time as well.
        config.theme.static_templates -= FOR_SERVERS
    for links in (config.validation.nav, config.validation.links):
        _mind_links(links)
    if SEARCH in config.plugins:
        config.plugins[SEARCH].config.enabled = False


def drop_needless(files: Any, config: Any) -> None:
    """Remove those of MkDocs's files that only developers, servers and other languages need.

    They are two thirds of a small site.
    """
    unused = (
        r"\.map$",
        r"^sitemap\.xml$",
        f"^{THEME_MARK}$",
        r"^assets/javascripts/(lunr|workers)/",
    )
    pattern = re.compile("|".join(unused))
    for file in list(files):
        if file.src_dir != config.docs_dir and pattern.search(file.src_uri):
            files.remove(file)


def find_flaws(config: Any) -> tuple[str, ...]:
    """Return what in a project's own settings does not work on a tablet with no network."""
    loaded = (str(path) for path in (*config.extra_css, *config.extra_javascript))
    return tuple(
        f"{path} is loaded from a network: put a copy into the pages' folder"
        for path in loaded
        if "//" in path
    )


def take_theme_offline(theme: MutableMapping[str, Any]) -> None:
    """Take away what needs a network; give light and dark where the project chose no colours.

    Raises SiteError for features that are not a list of names.
    """
    theme["font"] = False
    listed = theme.get("features") or []
    if not isinstance(listed, list) or not all(isinstance(name, str) for name in listed):
        raise SiteError("`features` of the theme is a list of names: write one `- name` a line")
    given = [name for name in listed if not name.startswith(NEEDS_SERVER)]
    theme["features"] = [*given, *(name for name in FEATURES if name not in given)]
    theme.setdefault("logo", MARK)
    if theme.get("favicon") == THEME_MARK:
        theme["favicon"] = MARK
    if not theme.get("palette"):
        theme["palette"] = [{**option, **COLOURS} for option in PALETTE]


def take_extra_offline(extra: MutableMapping[str, Any]) -> None:
    """Drop what asks a server."""
    for key in ASKS_NETWORK:
        extra.pop(key, None)
    extra.setdefault("generator", False)


def _mind_links(levels: MutableMapping[str, Any]) -> None:
    """Make a warning of what MkDocs only mentions; what a project has silenced stays silent."""
    for key, level in levels.items():
        if level == logging.INFO:
            levels[key] = logging.WARNING
