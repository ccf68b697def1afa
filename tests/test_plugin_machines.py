"""Machine sheets in a whole site: their pages, their addresses, their place in the navigation."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest

from pullcord.errors import FindingsError
from pullcord.plugin import build_site
from pullcord.site.pack import pack_site
from tests.pages.make import BIKE, CART, PUMP
from tests.shed import procedure, write_files
from tests.test_plugin import REPOSITORY, Elements, ids_of, navigation, places_of, site_bytes

METER = """\
      meter:
        title: the good meter
        leads: 0.05 ohm
        ranges: [{up-to: 2 kohm, step: 0.1 ohm, percent: 0.1, digits: 1}]
"""
COIL = """\
procedure: dark-coil
title: Measure the coil
symptom: The lamp on the bench stays dark.
about: For anyone whose lamp is fed by a coil.
fits: {ignition: points}
start: coil
causes:
  coil: {title: Coil broken, remedy: Fit another coil.}
steps:
  coil:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: unit.source, against: unit.ground, limits: source-coil,
              general: 200-300 ohm, source: common practice}
    answers: {below: cause coil, within: procedure dark-lamp, above: cause coil}
"""
JOB = """\
job: bike-spring
machine: old-bike
taken-in: 2026-02-14
purpose: To carry ladders again.
most: 250
log:
  - {date: 2026-02-21, procedure: dark-coil, step: coil, answer: within, reading: 252 ohm,
     note: The ground corrodes., photo: coil.png}
"""
PICTURE = b"\x89PNG\r\n\x1a\nrest"
FILES = {
    "docs/bench.md": "# Our bench\n",
    "procedures/dark-coil.yaml": COIL,
    "procedures/dark-lamp.yaml": procedure("dark-lamp"),
    "machines/old-bike.yaml": BIKE,
    "machines/old-pump.yaml": PUMP,
    "machines/cart.yaml": CART,
    "jobs/bike-spring.yaml": JOB,
    "mkdocs.yml": REPOSITORY.replace("false\n", f"false\n{METER}"),
}
LEAP_DAY = "951782400"


def write_project(folder: Path, files: dict[str, str]) -> Path:
    """Write the project, in the order of the files, and return its settings."""
    (folder / ".git").mkdir(parents=True)
    write_files(folder, files)
    (folder / "jobs" / "coil.png").write_bytes(PICTURE)
    return folder / "mkdocs.yml"


@pytest.fixture(scope="module")
def far_west() -> Iterator[None]:
    """Be half a day behind UTC, on the first second of a leap day there."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("SOURCE_DATE_EPOCH", LEAP_DAY)
        patch.setenv("TZ", "XYZ+12")
        time.tzset()
        yield
    time.tzset()


@pytest.fixture(scope="module")
def shed(tmp_path_factory: pytest.TempPathFactory, far_west: None) -> Path:
    """Build two procedures, three machines and a job in a repository; give the project's folder."""
    folder = tmp_path_factory.mktemp("machines")
    build_site(write_project(folder, FILES), None, strict=False)
    return folder


OTHERWISE = {
    "TZ": "XYZ-14",
    "PYTHONHASHSEED": "1",
    "LC_ALL": "C",
    "PYTHONUTF8": "0",
    "PYTHONCOERCECLOCALE": "0",
}
"""The other side of the date line, and a system that reads files as ASCII unless it is told."""
BUILD_AND_PACK = """\
import os, sys
from pathlib import Path
from pullcord.plugin import build_site
from pullcord.site.pack import pack_site
os.umask(0o077)
pack_site(build_site(Path("mkdocs.yml"), None, strict=False), Path(sys.argv[1]))
"""


def test_same_input_same_bytes(shed: Path, tmp_path: Path) -> None:
    """Wherever, whenever and in whatever language it is built: the site, its papers and its pack.

    Strings are hashed here by a seed that is another in every run, files are written and read in
    another order, and nothing that was kept is used again.
    """
    folder = tmp_path / "a" / "deeper one"
    write_project(folder, dict(reversed(FILES.items())))
    subprocess.run(
        [sys.executable, "-c", BUILD_AND_PACK, str(tmp_path / "there.zip")],
        cwd=folder,
        env={**os.environ, **OTHERWISE},
        check=True,
        timeout=120,
    )
    here, there = site_bytes(shed / "site"), site_bytes(folder / "site")
    assert here.keys() == there.keys()
    assert [name for name in here if here[name] != there[name]] == []
    assert {Path(name).suffix for name in here} >= {".html", ".pdf", ".js", ".css", ".png"}
    assert b"<svg" in here["procedures/dark-coil.html"]
    assert b"2000-02-29" in here["jobs/bike-spring.html"]
    packed = pack_site(shed / "site", tmp_path / "here.zip")
    assert packed.read_bytes() == (tmp_path / "there.zip").read_bytes()


def test_machines_beside_the_settings_are_found(shed: Path) -> None:
    """A page for each, and one for each procedure that fits it, at addresses made of names."""
    pages = {p.relative_to(shed / "site").as_posix() for p in shed.rglob("site/machines/**/*.html")}
    assert pages == {
        "machines/cart.html", "machines/old-bike.html", "machines/old-pump.html",
        "machines/cart/dark-lamp.html",
        "machines/old-bike/dark-coil.html", "machines/old-bike/dark-lamp.html",
        "machines/old-pump/dark-coil.html", "machines/old-pump/dark-lamp.html",
    }  # fmt: skip


def test_every_link_of_a_machine_leads_somewhere(shed: Path) -> None:
    """Each relative link names a file of the site, and an id that is on it."""
    broken = []
    for page in (shed / "site").rglob("*.html"):
        for link in Elements(page).values("href", "src"):
            parts = urlsplit(link)
            target = (page.parent / unquote(parts.path)) if parts.path else page
            if parts.scheme or (target.is_file() and not parts.fragment):
                continue
            if parts.fragment not in ids_of(target.resolve()):
                broken.append((page.name, link))
    assert broken == []


def test_the_meter_of_the_settings_judges(shed: Path) -> None:
    """A finer meter calls more of the readings, and is named."""
    page = (shed / "site" / "procedures" / "dark-coil.html").read_text("utf-8")
    assert "What the good meter can tell" in page
    assert "200.3 to 299.6 ohm" in page


def test_edit_link_opens_the_sheet(shed: Path) -> None:
    """A machine's page is edited in its YAML, its page of a procedure in the procedure's."""
    edits = {
        page: [a["href"] for _, a in Elements(shed / "site" / page).found if a.get("rel") == "edit"]
        for page in ("machines/old-bike.html", "machines/old-bike/dark-coil.html")
    }
    assert edits == {
        "machines/old-bike.html": ["https://code.test/shed/edit/main/machines/old-bike.yaml"],
        "machines/old-bike/dark-coil.html": [
            "https://code.test/shed/edit/main/procedures/dark-coil.yaml"
        ],
    }


def test_the_list_of_machines_is_in_the_navigation(shed: Path) -> None:
    """Behind the lists of procedures and jobs, and only where there are machines."""
    assert navigation(shed / "site" / "bench.html")[:5] == [
        "index.html", "procedures.html", "jobs.html", "machines.html", "how-to-read.html"
    ]  # fmt: skip


def test_a_word_is_found_once(shed: Path) -> None:
    """Search leads to the general page and to the sheet, not to a copy a machine."""
    places = [place for place, *_ in places_of(shed / "site")]
    assert "machines/old-bike.html" in places
    assert [place for place in places if place.endswith("dark-coil.html#step-coil")] == [
        "procedures/dark-coil.html#step-coil"
    ]


def test_a_slip_in_a_sheet_stops_the_build(shed: Path, tmp_path: Path) -> None:
    """With its file and line, as a slip in a procedure does."""
    slip = {"machines/old-bike.yaml": BIKE.replace("225-275 ohm", "275-225 ohm")}
    write_project(tmp_path / "shed", {**FILES, **slip})
    with pytest.raises(FindingsError) as caught:
        build_site(tmp_path / "shed" / "mkdocs.yml", None, strict=False)
    (finding,) = (each for each in caught.value.findings if "runs backwards" in each.message)
    assert finding.file.endswith("machines/old-bike.yaml")
    assert finding.line == 1 + BIKE[: BIKE.index("225-275")].count("\n")
