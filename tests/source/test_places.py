"""What comes along with Pullcord is found, in a checkout and in an installed package."""

from __future__ import annotations

from pathlib import Path

import pytest

from pullcord.source import places

ROOT = Path(__file__).parents[2]


def test_in_a_checkout() -> None:
    """The folders beside the package's source."""
    assert places.shipped_procedures() == ROOT / "procedures"
    assert places.site_templates() == ROOT / "site_templates"


def test_in_an_installed_package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The folders inside the package, which go first."""
    (tmp_path / "procedures").mkdir()
    monkeypatch.setattr(places, "_PACKAGE", tmp_path)
    assert places.shipped_procedures() == tmp_path / "procedures"
