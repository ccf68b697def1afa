"""What a shop gets when it installs the wheel."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
import venv
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the wheel from the checkout."""
    out = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(out)]
    subprocess.run(command, cwd=ROOT, check=True, capture_output=True)
    (built,) = out.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def wheel_names(wheel: Path) -> frozenset[str]:
    """List the wheel's files."""
    return frozenset(zipfile.ZipFile(wheel).namelist())


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Install the wheel into a fresh environment, and return its `pullcord`.

    What it depends on is taken from the environment the tests run in: nothing is downloaded.
    """
    place = tmp_path_factory.mktemp("shop") / "env"
    venv.create(place, with_pip=False, symlinks=True)
    python = place / "bin" / "python"
    packages = Path(sysconfig.get_path("purelib", vars={"base": str(place)}))
    (packages / "tests-environment.pth").write_text(sysconfig.get_path("purelib") + "\n")
    command = [sys.executable, "-m", "pip", "--python", str(python), "install", "--quiet"]
    offline = ["--no-deps", "--no-index", "--disable-pip-version-check", str(wheel)]
    subprocess.run([*command, *offline], check=True, capture_output=True, timeout=120)
    return place / "bin" / "pullcord"


def run(pullcord: Path, folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """Run the installed `pullcord` in a folder, as a shop would, with nothing of the checkout."""
    kept = {key: value for key, value in os.environ.items() if not key.startswith("PYTHON")}
    # The layout engine is a program that comes with a dependency, and those are not installed anew.
    kept["PATH"] = os.pathsep.join([str(Path(sys.executable).parent), kept["PATH"]])
    return subprocess.run(
        [str(pullcord), *words],
        cwd=folder,
        env={**kept, "NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
    )


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
    assert not any(part.startswith(".") for name in wheel_names for part in name.split("/"))


def test_from_nothing_to_a_site(installed: Path, tmp_path: Path) -> None:
    """What the guide says to type, word for word: begin, add one of each, check, log, build."""
    where = run(installed.with_name("python"), tmp_path, "-c", "import pullcord as p; print(p)")
    assert str(installed.parents[1]) in where.stdout
    done = run(installed, tmp_path, "init", "our-shed")
    assert (done.returncode, done.stderr) == (0, "")
    shed = tmp_path / "our-shed"
    taken = run(installed, shed, "new", "procedure", "no-spark", "--title=x", "--symptom=y")
    assert f"already: {installed.parents[1]}" in taken.stderr
    # The whole library takes minutes to print: from here on it is the shop's own files alone.
    settings = (shed / "mkdocs.yml").read_text()
    own = settings.replace("- pullcord:\n", "- pullcord:\n      library: false\n")
    (shed / "mkdocs.yml").write_text(own)
    (shed / "procedures" / "own.yaml").write_text(STAGES)
    for words in (
        ("new", "procedure", "wont-charge", "--title=No charge", "--symptom=The battery is flat."),
        ("new", "machine", "old-pump", "--title=Old pump", "--kind=pump", *UNKNOWN),
        ("new", "job", "pump-spring", "--machine=old-pump", "--purpose=To pump.", "--most=80"),
        ("log", "pump-spring", "--did=Cleaned the tank.", "--drains=petrol", "--minutes=40"),
        ("fmt", "--check"),
        ("check", "--strict"),
        ("build", "--strict"),
    ):
        done = run(installed, shed, *words)
        assert (done.returncode, "Traceback" in done.stderr) == (0, False), done
    assert done.stdout.splitlines()[-1] == f"The site is in {shed / 'site'}"
    for page in (
        "index.html",
        "our-shop.html",
        "procedures/wont-charge.html",
        "procedures/lamp-stays-dark.html",
        "machines/old-pump.html",
        "jobs/pump-spring.html",
    ):
        assert (shed / "site" / page).is_file(), page
    assert "Cleaned the tank." in (shed / "site" / "jobs" / "pump-spring.html").read_text()


STAGES = """\
stages: own
stage:
  taken-in: {title: Taken in, means: It is here.}
"""
UNKNOWN = ("--ignition=unknown", "--strokes=unknown")
