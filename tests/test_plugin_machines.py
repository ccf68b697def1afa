"""Machine sheets in a whole site: their pages, their addresses, their place in the navigation."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest

from pullcord.errors import FindingsError
from pullcord.plugin import build_site
from tests.pages.make import BIKE, CART, PUMP
from tests.shed import procedure, write_files
from tests.test_plugin import REPOSITORY, Elements, ids_of, navigation, places_of

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
FILES = {
    "docs/bench.md": "# Our bench\n",
    "procedures/dark-coil.yaml": COIL,
    "procedures/dark-lamp.yaml": procedure("dark-lamp"),
    "machines/old-bike.yaml": BIKE,
    "machines/old-pump.yaml": PUMP,
    "machines/cart.yaml": CART,
}


@pytest.fixture(scope="module")
def shed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build a project of two procedures and three machines in a repository; give its folder."""
    folder = tmp_path_factory.mktemp("machines")
    (folder / ".git").mkdir()
    write_files(folder, {**FILES, "mkdocs.yml": REPOSITORY.replace("false\n", f"false\n{METER}")})
    build_site(folder / "mkdocs.yml", None, strict=False)
    return folder


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
    """Behind the list of procedures, and only where there are machines."""
    assert navigation(shed / "site" / "bench.html")[:4] == [
        "index.html", "procedures.html", "machines.html", "how-to-read.html"
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
    write_files(tmp_path, {**FILES, **slip, "mkdocs.yml": REPOSITORY})
    with pytest.raises(FindingsError) as caught:
        build_site(tmp_path / "mkdocs.yml", None, strict=False)
    (finding,) = (each for each in caught.value.findings if "runs backwards" in each.message)
    assert finding.file.endswith("machines/old-bike.yaml")
    assert finding.line == 1 + BIKE[: BIKE.index("225-275")].count("\n")
