"""MkDocs's settings of a site that works with no network and no server."""

from __future__ import annotations

from pathlib import Path

import pytest
from mkdocs.config.defaults import MkDocsConfig

from pullcord.errors import SiteError
from pullcord.site.offline import SEARCH, find_flaws, take_offline


def settings(tmp_path: Path, **given: object) -> MkDocsConfig:
    """Return MkDocs's own settings, read as from a file."""
    (tmp_path / "docs").mkdir(exist_ok=True)
    config = MkDocsConfig(config_file_path=str(tmp_path / "mkdocs.yml"))
    config.load_dict({"site_name": "Shed", "theme": "material", "plugins": ["search"], **given})
    assert config.validate() == ([], [])
    return config


def test_plain_project(tmp_path: Path) -> None:
    """A project that sets nothing gets everything."""
    config = settings(tmp_path)
    take_offline(config, tmp_path / "overrides")
    assert config.use_directory_urls is False
    assert config.theme["font"] is False
    assert [option["scheme"] for option in config.theme["palette"][1:]] == ["default", "slate"]
    assert config.theme.dirs[0] == str(tmp_path / "overrides")
    assert config.validation.links.anchors == config.validation.links.not_found
    assert "sitemap.xml" not in config.theme.static_templates


def test_what_asks_a_network_goes(tmp_path: Path) -> None:
    """Whatever a project switches on, a page asks nobody for anything."""
    features = ["navigation.instant", "navigation.instant.prefetch", "toc.follow"]
    config = settings(
        tmp_path,
        theme={"name": "material", "font": {"text": "Roboto"}, "features": features},
        extra={"analytics": {"provider": "x"}, "version": {"provider": "y"}, "note": "kept"},
        use_directory_urls=True,
    )
    take_offline(config, tmp_path)
    assert config.use_directory_urls is False
    assert config.theme["font"] is False
    assert "toc.follow" in config.theme["features"]
    assert not [name for name in config.theme["features"] if "instant" in name]
    assert {"analytics", "version"}.isdisjoint(config.extra)
    assert config.extra["note"] == "kept"


def test_own_choices_stay(tmp_path: Path) -> None:
    """Colours, changes to the theme and silenced warnings of the project's own are kept."""
    own = tmp_path / "own"
    own.mkdir()
    config = settings(
        tmp_path,
        theme={"name": "material", "palette": {"scheme": "slate"}, "custom_dir": "own"},
        validation={"links": {"anchors": "ignore"}},
    )
    silent = config.validation.links.anchors
    take_offline(config, tmp_path / "overrides")
    assert config.theme["palette"] == {"scheme": "slate"}
    assert config.theme.dirs[:2] == [str(own), str(tmp_path / "overrides")]
    assert config.validation.links.anchors == silent


def test_other_theme_is_refused(tmp_path: Path) -> None:
    """The message says what to write."""
    with pytest.raises(SiteError, match="write `theme: material`"):
        take_offline(settings(tmp_path, theme="mkdocs"), tmp_path)


@pytest.mark.parametrize(
    "features", [3, [1], "toc.follow", {"toc.follow": True}], ids=["number", "list", "text", "keys"]
)
def test_features_that_are_no_list_of_names_are_refused(tmp_path: Path, features: object) -> None:
    """MkDocs hands on whatever the settings say below `theme`."""
    config = settings(tmp_path, theme={"name": "material", "features": features})
    with pytest.raises(SiteError, match="`features` of the theme is a list of names"):
        take_offline(config, tmp_path)


@pytest.mark.parametrize(
    ("given", "words"),
    [
        pytest.param({"extra_css": ["https://x.test/a.css"]}, "a.css is loaded", id="style"),
        pytest.param({"extra_javascript": ["//x.test/a.js"]}, "a.js is loaded", id="script"),
    ],
)
def test_flaws_only_the_project_can_mend(
    given: dict[str, object], words: str, tmp_path: Path
) -> None:
    """What would not work on the tablet is said at build time."""
    (flaw,) = find_flaws(settings(tmp_path, **given))
    assert words in flaw


def test_the_themes_search_gives_way_to_ours(tmp_path: Path) -> None:
    """A project that lists it keeps its settings file, and gets one search all the same."""
    config = settings(tmp_path, plugins=["search"])
    take_offline(config, tmp_path)
    assert config.plugins[SEARCH].config.enabled is False
