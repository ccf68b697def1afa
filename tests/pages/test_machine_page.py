"""A machine's page gathers its sheet, its plugs, what follows from its figures, its procedures."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import yaml

from pullcord.model.machine import Machine
from pullcord.pages.machine_page import machine_page
from pullcord.readings import NOT_KNOWN
from tests.pages.jobs import Bench
from tests.pages.make import (
    BIKE,
    KIT,
    PINNED,
    SHEET_DIGEST,
    WONT_IDLE,
    machine,
    pages_of,
    procedure,
    shed_pages,
    tree_of,
)
from tests.pages.tree import Element

PAGE = tree_of(shed_pages()["machines/old-bike.md"])
HOSTILE = "</p></style><script>x</script><img src=x onerror=x>\"'{{7*7}}{% x %}&amp;\\"


def values(page: Element) -> dict[str, str]:
    """Return the figures of a sheet by their titles."""
    rows = page.all("pc-values")[0].tags("div")
    return {row.tags("dt")[0].text: row.tags("dd")[0].text for row in rows}


def table(page: Element, title: str) -> list[list[str]]:
    """Return the rows of the table with a title."""
    (found,) = [e for e in page.all("pc-table-scroll") if e.attrs["aria-label"] == title]
    return [[c.text for c in row.walk() if c.tag in {"th", "td"}] for row in found.tags("tr")]


def test_it_says_what_the_machine_is() -> None:
    """Kind, ignition, fuel, engine, drive and height; what nobody knows is left out."""
    facts = [row.text for row in PAGE.all("pc-summary")[0].tags("div")]
    assert facts == [
        "Kind farm bike", "Ignition points", "Fuel carburettor", "Engine two-stroke",
        "Drive Chain", "Height above the sea 640 m",
    ]  # fmt: skip
    assert "Stands behind the barn." in PAGE.text


def test_every_figure_stands_with_its_source() -> None:
    """In both systems of units, with what it is and where it comes from."""
    found = values(PAGE)
    assert found["Source coil"] == (
        "225 to 275 ohm Source: measured Copper winding, at 20 °C Read 250 ohm in May."
    )
    assert found["Plug gap"] == "0.6 to 0.7 mm (0.024 to 0.028 in) Source: a leaflet"
    assert found["Tyre size"] == "21x7-10 Source: the tyre"


def test_what_is_not_known_has_room() -> None:
    """The one figure that is missing says so, with a line to write on."""
    assert values(PAGE)["Oil"] == NOT_KNOWN
    assert len(PAGE.all("pc-blank")) == 1


def test_what_follows_is_worked_out() -> None:
    """Displacement π/4 · 40² · 34 = 42.7 cc; 12 links of half an inch are six inches new."""
    rows = {row[0]: row[1] for row in table(PAGE, "Worked out from the sheet")[1:]}
    assert rows["Displacement"] == "43 cc"
    assert rows["Chain over 12 links"].startswith("new 152.4 mm (6.000 in)")


def test_windings_stand_by_temperature() -> None:
    """225 to 275 ohm at 20 °C are 0.882 of that at -10 °C (IEC 60028)."""
    rows = table(PAGE, "Copper windings in a cold or a hot shop")
    assert rows[0] == ["Shop temperature", "Source coil"]
    assert rows[1] == ["−10 °C", "198–243 Ω"]
    assert rows[4] == ["20 °C", "225–275 Ω"]


def test_every_plug_is_drawn_with_a_table_below() -> None:
    """The same pins in the drawing and in the table, the one without figures too."""
    plug = PAGE.by_id("plug-unit")
    assert plug.all("pc-pins")
    rows = [[c.text for c in row.walk() if c.tag in {"th", "td"}] for row in plug.tags("tr")]
    assert rows[1:] == [
        ["a1", "BK/RD: black with a red stripe", "Source coil", "a2",
         "225 to 275 ohm good when the meter shows 229 to 271 ohm Source: measured", ""],
        ["a2", "GN: green", "Ground Corrodes first.", "", NOT_KNOWN, ""],
    ]  # fmt: skip
    assert "Behind the seat." in plug.text


def test_it_leads_to_its_procedures() -> None:
    """Those it fits, on its own pages; the cart's page does not offer what is not for it."""
    links = [link.attrs["href"] for link in PAGE.by_id("procedures").tags("a")]
    assert links == ["old-bike/no-spark.html", "old-bike/wont-idle.html"]
    cart = tree_of(shed_pages()["machines/cart.md"])
    links = [link.attrs["href"] for link in cart.by_id("procedures").tags("a")]
    assert links == ["cart/wont-idle.html"]


def test_a_machine_nobody_knows_has_a_page() -> None:
    """A sheet of three lines is enough to begin with; empty sections are left out."""
    page = tree_of(shed_pages()["machines/old-pump.md"])
    assert {e.attrs["id"] for e in page.all("pc-section")} == {"procedures"}


def test_it_is_edited_in_its_sheet() -> None:
    """The edit link and the foot are the sheet's."""
    page = shed_pages()["machines/old-bike.md"]
    assert page.source == Path("machines/old-bike.yaml")
    assert f"Machine sheet: revision {SHEET_DIGEST}" in PAGE.all("pc-imprint")[0].text
    assert "Procedure: revision" not in PAGE.all("pc-imprint")[0].text


def texts(data: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """Yield where a sheet holds free words."""
    if isinstance(data, dict):
        for key, value in data.items():
            yield from texts(value, (*path, key))
    elif isinstance(data, list):
        for number, value in enumerate(data):
            yield from texts(value, (*path, number))
    elif path[-1] in {"title", "about", "drive", "source", "note", "function"}:
        yield path


DATA: dict[str, Any] = yaml.load(BIKE, Loader=yaml.BaseLoader)  # noqa: S506 text only
PLACES = list(texts(DATA))


def page_with(text: str) -> Element:
    """Return the machine's page with a text in every place for words, and its number behind."""
    data = yaml.load(BIKE, Loader=yaml.BaseLoader)  # noqa: S506 text only
    for number, place in enumerate(PLACES):
        here = data
        for step in place[:-1]:
            here = here[step]
        here[place[-1]] = f"{text}{number}."
    sheet = Machine.model_validate(data)
    pages = pages_of(procedure(PINNED), procedure(WONT_IDLE), machines=(sheet,))
    for page in pages.values():
        found = tree_of(page)
        assert not any("onerror" in e.attrs for e in found.walk()), page.src_uri
        assert all("<" not in style.text for style in found.tags("style")), page.src_uri
    return tree_of(pages["machines/old-bike.md"])


def test_a_hostile_sheet_comes_out_as_text() -> None:
    """Whatever a sheet says is text on every page that says it, and makes no element."""
    assert len(PLACES) > 10
    page, plain = page_with(HOSTILE), page_with("Words")
    for number in range(len(PLACES)):
        assert f"{HOSTILE}{number}." in page.text
    assert page.tags("script") == page.tags("img") == []
    drawn = {"text", "g"}
    tags = [[e.tag for e in each.walk() if e.tag not in drawn] for each in (page, plain)]
    assert tags[0] == tags[1]


@pytest.mark.parametrize("limits", ["open", "over 1 Mohm", "up to 3 l", "-10 to 5 °C", "78-80"])
def test_any_figure_makes_a_page(limits: str) -> None:
    """Whatever a sheet may hold can be shown."""
    text = BIKE.replace("limits: 225-275 ohm, winding: copper", f"limits: {limits}")
    text = text.replace("78-80", "78-80 links")
    pages = pages_of(procedure(PINNED), procedure(WONT_IDLE), machines=(machine(text),))
    assert values(tree_of(pages["machines/old-bike.md"]))["Source coil"]


def test_a_machines_page_leads_to_the_jobs_on_it() -> None:
    """By the day it was taken in and what for; another machine's jobs are not named."""
    bench = Bench()
    read = bench.shelf.machines["old-bike"]
    page = tree_of(machine_page(KIT, bench.shelf, read, bench.subject))
    (link,) = page.by_id("jobs").tags("a")
    assert link.attrs["href"] == "../jobs/spring.html"
    assert link.text == f"Taken in on {bench.report.job.taken_in} {bench.report.job.purpose}"
    other = replace(read, machine=read.machine.model_copy(update={"machine": "other"}))
    assert "jobs" not in tree_of(machine_page(KIT, bench.shelf, other, bench.subject)).ids()
