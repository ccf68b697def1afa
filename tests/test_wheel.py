"""What a shop gets when it installs the wheel."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="module")
def wheel_names(tmp_path_factory: pytest.TempPathFactory) -> frozenset[str]:
    """Build the wheel from the checkout and list its files."""
    out = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(out)]
    subprocess.run(command, cwd=ROOT, check=True, capture_output=True)
    (wheel,) = out.glob("*.whl")
    return frozenset(zipfile.ZipFile(wheel).namelist())


@pytest.mark.parametrize("folder", ["site_templates", "procedures"])
def test_templates_and_procedures_ship_whole(wheel_names: frozenset[str], folder: str) -> None:
    """Every file of the shipped folders is inside the package."""
    files = {
        f"pullcord/{path.relative_to(ROOT).as_posix()}"
        for path in (ROOT / folder).rglob("*")
        if path.is_file() and not path.name.startswith(".")
    }
    assert files
    assert files <= wheel_names


def test_nothing_of_the_workshop_ships(wheel_names: frozenset[str]) -> None:
    """Tests, demo data and build leftovers stay out of the wheel."""
    outside = {name for name in wheel_names if not name.startswith(("pullcord/", "pullcord-"))}
    assert outside == set()
    assert not any("__pycache__" in name or "/tests/" in name for name in wheel_names)
