"""What the walk's scripts are told, held against the page they work on and the readings below."""

from __future__ import annotations

import json
from decimal import Decimal
from functools import cache
from typing import Any

import pytest

from pullcord.readings.bands import judge
from pullcord.readings.resolve import for_machine
from tests.pages.make import DIGEST, IN_GENERAL, NO_SPARK, WONT_IDLE, machine, pages_of, procedure
from tests.pages.tree import Element, read_html

QUINCE = """\
machine: quince
title: Quince, pump
kind: pump
ignition: magneto
strokes: two
values:
  source-coil: {limits: 200-300 ohm, winding: copper, source: measured from a good one}
"""
GENERAL = "procedures/no-spark.md"
OWN = "machines/quince/no-spark.md"
HOSTILE = "</script><script>x</script><!-- ]]> \u2028 '\"&lt; {{7*7}} {x}"
SHOWN = [0, 100, 198, 204, 250, 296, 297, 300, 305, 1999, 2_000_000]
"""Ohms: well within, on the ends, and in the doubt between."""


@cache
def pages() -> dict[str, Element]:
    """Make the pages of the examples with one machine."""
    made = pages_of(procedure(NO_SPARK), procedure(WONT_IDLE), machines=(machine(QUINCE),))
    return {uri: read_html(page.html) for uri, page in made.items()}


def told(page: Element) -> Any:
    """Read what the scripts of a page are told."""
    return json.loads(page.by_id("pc-walk-data").inside[0])


def band_at(bands: list[dict[str, Any]], value: float) -> dict[str, Any]:
    """Find the band of a reading as the script does: the first whose end lies above it."""
    ends = [float("inf") if band["end"] is None else band["end"] for band in bands]
    return next(
        band
        for band, end in zip(bands, ends, strict=True)
        if value < end or (band["holds_end"] and value == end)
    )


def test_what_a_page_is_about() -> None:
    """Names, revision and the links between the home page and this one."""
    general, own = told(pages()[GENERAL]), told(pages()[OWN])
    assert (general["procedure"], general["machine"], general["digest"]) == ("no-spark", "", DIGEST)
    assert (own["machine"], own["machine_title"]) == ("quince", "Quince, pump")
    assert (general["home"], general["page"]) == ("../index.html", "procedures/no-spark.html")
    assert (own["home"], own["page"]) == ("../../index.html", "machines/quince/no-spark.html")
    assert general["start"] == "step-plug"


@pytest.mark.parametrize("uri", [GENERAL, OWN, "procedures/wont-idle.md"])
def test_answers_are_those_of_the_page(uri: str) -> None:
    """As many, in the same order, leading to the same sections or off the page."""
    page, data = pages()[uri], told(pages()[uri])
    for id_, place in data["places"].items():
        ways = page.by_id(id_).all("pc-way")
        assert [answer["said"] for answer in place["answers"]] == [
            str(way.all("pc-way__said")[0].inside[0]) for way in ways
        ]
        for answer, way in zip(place["answers"], ways, strict=True):
            assert way.attrs["href"] == f"#{answer['to']}" or answer["to"] not in page.ids()


def test_every_step_is_a_place() -> None:
    """A step that the scripts know nothing of could not be walked through."""
    ids = {each.attrs["id"] for each in pages()[GENERAL].all("pc-step")}
    steps = {id_ for id_ in ids if id_.startswith("step-")}
    assert set(told(pages()[GENERAL])["places"]) == steps


def test_causes_left_by_hand() -> None:
    """At the coil only the coil is left; at the start the likeliest comes first."""
    data = told(pages()[GENERAL])
    assert data["causes"] == ["Plug fouled", "Tap drips", "Coil open"]
    assert [place for place, _ in data["places"]["step-coil"]["causes"]] == [2]
    assert [place for place, _ in data["places"]["step-plug"]["causes"]] == [2, 0, 1]
    assert data["places"]["step-coil"]["left"] == "About 10 min to the answer"


@pytest.mark.parametrize("shown", SHOWN)
def test_bands_tell_what_the_readings_tell(shown: int) -> None:
    """The script's own search finds the band that `judge` finds."""
    step = procedure(NO_SPARK).steps["coil"]
    assert step.reading
    resolved = for_machine(step.reading, tuple(step.answers), None, IN_GENERAL.meter)
    meant = judge(resolved.bands, Decimal(shown))
    place = told(pages()[GENERAL])["places"]["step-coil"]
    found = band_at(place["reading"]["rows"][0]["bands"], shown)
    assert found["shows"] == meant.words
    assert [place["answers"][i]["key"] for i in found["answers"]] == list(meant.answers)


def test_open_is_more_than_any_number() -> None:
    """Over-range falls in the last band, ten million ohm in the one before."""
    place = told(pages()[GENERAL])["places"]["step-coil"]
    bands = place["reading"]["rows"][0]["bands"]
    assert place["answers"][band_at(bands, float("inf"))["answers"][0]]["key"] == "open"
    assert place["answers"][band_at(bands, 1e7)["answers"][0]]["key"] == "above"


def test_a_cold_coil_reads_less() -> None:
    """At -10 °C copper has 0.882 of its resistance at 20 °C: 190 ohm pass there, and fail at 20.

    0.882 = 1 - 30 x 0.00393, the coefficient of annealed copper (IEC 60028).
    """
    rows = told(pages()[OWN])["places"]["step-coil"]["reading"]["rows"]
    assert [row["celsius"] for row in rows] == [20, -10, 0, 10, 30, 40]
    kinds = {row["celsius"]: band_at(row["bands"], 190)["kind"] for row in rows}
    assert (kinds[-10], kinds[20]) == ("within", "outside")


def test_other_readings_have_one_row() -> None:
    """The general page does not know that the coil is of copper."""
    reading = told(pages()[GENERAL])["places"]["step-coil"]["reading"]
    assert [row["celsius"] for row in reading["rows"]] == [None]
    units = told(pages()[GENERAL])["units"][reading["quantity"]]
    assert [(unit["name"], unit["factor"]) for unit in units] == [
        ("ohm", 1), ("kohm", 1e3), ("Mohm", 1e6)
    ]  # fmt: skip


def test_hostile_text_stays_data() -> None:
    """Nothing in a procedure ends the script element, and it comes out as it went in."""
    text = NO_SPARK.replace("title: No spark", f"title: {json.dumps(HOSTILE)}")
    text = text.replace("a blue spark:", f"{json.dumps(HOSTILE)}:")
    page = read_html(pages_of(procedure(text), procedure(WONT_IDLE))[GENERAL].html)
    assert page.runs() == []
    assert told(page)["title"] == HOSTILE
    assert told(page)["places"]["step-plug"]["answers"][0]["key"] == HOSTILE
