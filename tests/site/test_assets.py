"""Styles, scripts and pictures of the site."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace

import pytest

from pullcord.site.assets import Asset, joined, list_in, read_assets
from pullcord.site.offline import MARK
from pullcord.source.places import site_templates


@pytest.fixture
def folders(tmp_path: Path) -> list[Path]:
    """Give a project's folder of templates that goes before another."""
    for name, text in {
        "own/assets/page.css": "own",
        "shipped/assets/page.css": "shipped",
        "shipped/assets/fold/sign.svg": "sign",
        "shipped/assets/b.js": "b",
        "shipped/assets/a.js": "a",
        "shipped/assets/.page.css.swp": "an editor's leftover",
        "shipped/pages/home.html.j2": "no asset",
    }.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return [tmp_path / "own", tmp_path / "shipped"]


def test_own_file_goes_before_the_shipped_one(folders: list[Path]) -> None:
    """Files come in the order of their addresses, the project's own instead of ours."""
    assert {asset.uri: asset.content for asset in read_assets(folders)} == {
        "assets/pullcord/a.js": b"a",
        "assets/pullcord/b.js": b"b",
        "assets/pullcord/fold/sign.svg": b"sign",
        "assets/pullcord/page.css": b"own",
    }


def test_what_a_page_loads(folders: list[Path]) -> None:
    """Pages load every style and script, ours first."""
    config = SimpleNamespace(extra_css=["own.css"], extra_javascript=["own.js"])
    list_in(config, read_assets(folders))
    assert config.extra_css == ["assets/pullcord/page.css", "own.css"]
    assert config.extra_javascript == [
        "assets/pullcord/a.js", "assets/pullcord/b.js", "own.js"
    ]  # fmt: skip


def test_our_files_become_one_of_a_kind() -> None:
    """A script that does not end its last statement leaves the next one whole."""
    files = {"a.css": b"p{}", "a.js": b"(f)()", "b.css": b"q{}", "b.js": b"(g)()", "own.js": b"o"}
    assets = [Asset(f"assets/pullcord/{name}", content) for name, content in files.items()]
    shipped = {asset.uri for asset in assets if "own" not in asset.uri}
    assert {asset.uri: asset.content for asset in joined(assets, shipped)} == {
        "assets/pullcord/pullcord.css": b"p{}\nq{}",
        "assets/pullcord/pullcord.js": b"(f)()\n;\n(g)()",
        "assets/pullcord/own.js": b"o",
    }


def test_shipped_assets() -> None:
    """What the theme is told to show lies among the assets that ship."""
    assert MARK in {asset.uri for asset in read_assets([site_templates()])}
