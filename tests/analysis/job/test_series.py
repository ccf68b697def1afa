"""Readings over time: in one unit, at one temperature, with the meter's doubt."""

from __future__ import annotations

from math import sqrt

import pytest

from pullcord.analysis.job.report import Series
from pullcord.analysis.job.series import read_series
from pullcord.readings.interval import OPEN
from tests.analysis.job.making import make_given


def read(value: str, *readings: str) -> Series:
    """Return the series of readings of one value, each given with its `celsius` or alone."""
    log = [
        f"{{date: 2026-02-{place + 1:02}, value: {value}, reading: {reading}}}"
        for place, reading in enumerate(readings)
    ]
    (series,) = read_series(make_given(*log))
    return series


VERDICTS = {
    "in the middle": ("source-coil", "250 ohm", "within"),
    "in another unit": ("source-coil", "0.25 kohm", "within"),
    "too low": ("source-coil", "150 ohm", "outside"),
    "at the limit": ("source-coil", "201 ohm", "too close"),
    "broken": ("source-coil", "OL", "outside"),
    "cold shop, cold coil": ("source-coil", "190 ohm, celsius: 0", "within"),
    "the same in the warm": ("source-coil", "190 ohm, celsius: 20", "outside"),
    "open is good": ("stop-wire-run", "OL", "within"),
    "and a number is not": ("stop-wire-run", "12 kohm", "outside"),
    "no instrument described": ("plug-gap", "0.6 mm", "within"),
    "nothing to judge by": ("chain", "80 links", "not judged"),
}


@pytest.mark.parametrize(("value", "reading", "verdict"), VERDICTS.values(), ids=VERDICTS)
def test_a_reading_is_judged_with_the_meter_and_the_warmth_in_mind(value, reading, verdict) -> None:
    """As a page of the sheet would judge it on the same evening."""
    assert read(value, reading).points[0].verdict == verdict


def test_a_series_has_one_unit_and_its_limits_in_it() -> None:
    """Whatever unit somebody wrote, points and limits can be drawn on one scale."""
    series = read("stop-wire-run", "1500 kohm", "OL", "2 Mohm")
    assert series.unit.name == "Mohm"
    assert [point.amount for point in series.points] == [1.5, None, 2.0]
    assert [point.text for point in series.points] == ["1500 kohm", "OL", "2 Mohm"]
    assert series.limits is not None
    assert (series.limits.start.value, series.limits.end.value) == (1, OPEN)
    assert (series.name, series.title) == ("stop-wire-run", "Stop wire at run")


def test_a_copper_winding_is_told_at_the_temperature_of_its_limits() -> None:
    """R(75 °C) / R(20 °C) = 1.2162, R(-10) / R(20) = 0.8821 for copper.

    0.00393 per K at 20 °C: Industrial Power Engineering Handbook, p. 970, of NBS Handbook 100.
    """
    hot, cold = 250 * 1.21615, 250 * 0.8821
    series = read("source-coil", f"{hot:.2f} ohm, celsius: 60", f"{cold:.2f} ohm, celsius: -10")
    # The log takes 60 °C at most, so 75 °C is gone back from: 1.21615 / 1.1572.
    assert series.points[0].amount == pytest.approx(250 * 1.21615 / 1.1572, rel=1e-4)
    assert series.points[1].amount == pytest.approx(250, rel=1e-4)


def test_half_width_is_the_meters_leaflet_at_95_percent() -> None:
    """A cheap 3½-digit meter at 250 ohm: 2 kohm range, 0.8 % and 2 digits of 1 ohm, leads 0.15 ohm.

    Bounds 2.0 + 2.0 = 4.0 and 0.15, each over root three (JCGM 100:2008, 4.3.7, from memory), root
    sum of squares, times 1.96: 4.53 ohm.
    """
    expected = 1.96 * sqrt((4.0**2 + 0.15**2) / 3)
    assert read("source-coil", "250 ohm").points[0].half_width == pytest.approx(expected)
    assert read("source-coil", "0.25 kohm").points[0].half_width == pytest.approx(expected)
    assert read("source-coil", "OL").points[0].half_width == 0


def test_an_instrument_nobody_described_is_not_taken_at_its_word() -> None:
    """Two percent and one step of the last digit (common practice), as a rectangular bound."""
    expected = 1.96 * (0.65 * 0.02 + 0.01) / sqrt(3)
    assert read("plug-gap", "0.65 mm").points[0].half_width == pytest.approx(expected)


WARM = ", celsius: 20"
DRIFTS = {
    "one reading": (["250 ohm"], ""),
    "the same twice": (["250 ohm", "250 ohm"], ""),
    # Both doubts are 4.5 ohm, so their root sum of squares is 6.4 ohm.
    "within the meter's doubt": ([f"250 ohm{WARM}", f"256 ohm{WARM}"], ""),
    "beyond it": (
        [f"250 ohm{WARM}", f"257 ohm{WARM}"],
        "It has gone up by 7 ohm from 2026-02-01 to 2026-02-02; the meter explains no more than "
        "6.45 ohm.",
    ),
    "down": ([f"280 ohm{WARM}", f"240 ohm{WARM}"], "It has gone down by 40 ohm"),
    "only between": ([f"250 ohm{WARM}", f"280 ohm{WARM}", f"251 ohm{WARM}"], ""),
    "a cold evening explains it": (["231 ohm, celsius: 0", f"250 ohm{WARM}"], ""),
    "and a warm one hides it": (["250 ohm, celsius: 0", f"250 ohm{WARM}"], "gone down by 21.3"),
    "nobody knows how warm it was": (["250 ohm", f"258 ohm{WARM}"], ""),
    "but that explains only so much": (["250 ohm", f"290 ohm{WARM}"], "meter and warmth explain"),
    "broken since": (["250 ohm", "OL"], "It read 250 ohm on 2026-02-01, but OL on 2026-02-02."),
    "broken all along": (["OL", "OL"], ""),
}


@pytest.mark.parametrize(("readings", "words"), DRIFTS.values(), ids=DRIFTS)
def test_a_drift_is_told_when_the_meter_does_not_explain_it(readings, words) -> None:
    """First and last differ by more than the root sum of squares of both doubts, or not."""
    drift = read("source-coil", *readings).drift
    assert words in drift
    assert bool(drift) is bool(words)


def test_readings_of_steps_and_of_values_are_one_series() -> None:
    """A step that is held against a value of the sheet measures that value."""
    given = make_given(
        "{date: 2026-02-01, procedure: spark, step: coil, reading: 250 ohm}",
        "{date: 2026-02-02, value: source-coil, reading: 251 ohm}",
        "{date: 2026-02-03, value: plug-gap, reading: 0.65 mm}",
    )
    assert [(each.name, len(each.points)) for each in read_series(given)] == [
        ("source-coil", 2),
        ("plug-gap", 1),
    ]


def test_a_step_without_a_value_of_the_sheet_is_a_series_of_its_own() -> None:
    """It is named after procedure and step, and judged by no limits of this machine."""
    given = make_given(
        "{date: 2026-02-01, procedure: spark, step: coil, reading: 250 ohm}", machines={}
    )
    (series,) = read_series(given)
    assert (series.name, series.title, series.limits) == ("spark.coil", "Measure the coil", None)
    assert series.points[0].verdict == "not judged"


def test_what_cannot_be_read_is_left_out() -> None:
    """The rules report it; here it is no reading."""
    given = make_given(
        "{date: 2026-02-01, value: source-coil, reading: about right}",
        "{date: 2026-02-01, value: source-coil, reading: 3 V}",
        "{date: 2026-02-01, value: unheard-of, reading: 3 V}",
        "{date: 2026-02-01, reading: 3 V}",
    )
    assert read_series(given) == ()
