"""What the command line prints from: a project's settings, or what ships."""

from __future__ import annotations

from pathlib import Path

import pytest

from pullcord.errors import FindingsError, PullcordError
from pullcord.rules.example import example
from pullcord.site.paper import read_project_press

GOOD = example("title: Pump will not prime\n")
SETTINGS = """\
site_name: Test
plugins:
  - pullcord:
      library: false
      currency: EUR
      templates: [ours]
"""


@pytest.fixture
def shed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in a folder with one procedure, on a given day."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1772323200")
    (tmp_path / "procedures").mkdir()
    (tmp_path / "procedures" / "no-prime.yaml").write_text(GOOD)
    return tmp_path


def test_a_project_is_printed_as_its_settings_say(shed: Path) -> None:
    """Its own procedures, money, texts and cache; dated by the environment."""
    (shed / "mkdocs.yml").write_text(SETTINGS)
    (shed / "ours" / "texts").mkdir(parents=True)
    (shed / "ours" / "texts" / "paper.yaml").write_text("line_name: Who\n")
    press = read_project_press("letter")
    settings = press.kit.settings
    assert set(press.project.files) == {"no-prime"}
    assert (settings.currency, settings.build_date) == ("EUR", "2026-03-01")
    assert settings.cache_folder == Path(".cache/pullcord")
    assert (press.words["line_name"], press.paper) == ("Who", "letter")


def test_without_settings_the_folder_of_procedures_is_printed(shed: Path) -> None:
    """Beside what ships, as `check` reads it; nothing is kept in a folder that is no project."""
    press = read_project_press("a4")
    assert {"no-prime", "no-spark"} <= set(press.project.files)
    assert press.kit.settings.cache_folder is None


def test_a_missing_folder_of_templates_is_told(shed: Path) -> None:
    """Rather than printing without the project's own words."""
    (shed / "mkdocs.yml").write_text(SETTINGS)
    with pytest.raises(PullcordError, match="`templates` names ours, which is no folder"):
        read_project_press("a4")


def test_an_error_stops_the_press(shed: Path) -> None:
    """What was not proven safe is not printed."""
    (shed / "procedures" / "no-prime.yaml").write_text(GOOD.replace("cause air-leak", "cause x"))
    with pytest.raises(FindingsError):
        read_project_press("a4")
