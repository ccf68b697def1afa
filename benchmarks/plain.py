"""The floor: a plain MkDocs Material project of the very pages that Pullcord hands to MkDocs."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import yaml
from mkdocs.config import load_config

from pullcord.site.made import Made, make_site
from pullcord.site.offline import take_theme_offline

SETTINGS = "site_name: Made up\ntheme: material\nplugins:\n  - pullcord: {library: false}\n"
"""Of the project that Pullcord builds."""


def write_plain(project: Path, folder: Path) -> int:
    """Write the finished pages of a project as another's sources, and return how many they are.

    The pages, styles and scripts are all there; the printed sheets and bound files are not.
    """
    made = finished(project)
    docs = folder / "docs"
    for uri, page in made.pages.items():
        head = yaml.safe_dump({"title": str(page.title), "search": {"exclude": not page.in_search}})
        _write(docs / uri, f"---\n{head}---\n\n{page.html}\n".encode())
    for asset in made.assets:
        _write(docs / asset.uri, asset.content)
    text = yaml.safe_dump(_settings(made), sort_keys=False)
    (folder / "mkdocs.yml").write_text(text, encoding="utf-8")
    return len(made.pages)


def finished(project: Path) -> Made:
    """Return the pages and assets of a project."""
    before = Path.cwd()
    os.chdir(project)
    try:
        config: Any = load_config("mkdocs.yml")
        return make_site(config, config.plugins["pullcord"].config)
    finally:
        os.chdir(before)


def _settings(made: Made) -> dict[str, Any]:
    theme: dict[str, Any] = {"name": "material"}
    take_theme_offline(theme)
    uris = [asset.uri for asset in made.assets]
    return {
        "site_name": "Made up",
        "use_directory_urls": False,
        "theme": theme,
        "extra": {"generator": False},
        "nav": [{str(page.title): uri} for uri, page in made.pages.items() if page.in_nav],
        "not_in_nav": "*",
        "extra_css": [uri for uri in uris if uri.endswith(".css")],
        "extra_javascript": [uri for uri in uris if uri.endswith(".js")],
        "plugins": ["search"],
    }


def _write(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
