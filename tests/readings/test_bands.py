"""What a display proves on the default cheap meter."""

from __future__ import annotations

from decimal import Decimal
from itertools import pairwise
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.model.meter import MeterRange, MeterSheet
from pullcord.readings.answers import shares_of
from pullcord.readings.bands import Band, bands_of, judge, untold
from pullcord.readings.limits import parse_limits
from pullcord.readings.meter import Meter, parse_meter
from pullcord.readings.uncertainty import ONE_SIDED_95
from pullcord.readings.unit import UNITS, base_unit

CHEAP = parse_meter(MeterSheet())
THREE = ("below", "within", "above")


def bands(limits: str, answers: tuple[str, ...] = THREE, meter: Meter = CHEAP) -> tuple[Band, ...]:
    """Return the bands of limits on a meter."""
    read = parse_limits(limits)
    return bands_of(shares_of(answers, read, read.quantity), meter, read.unit)


@pytest.mark.parametrize(
    ("limits", "answers", "expected"),
    [
        (
            "200-300 ohm", THREE,
            [
                (("below",), "198.2 ohm or less"),
                (("below", "within"), "198.3 to 203 ohm"),
                (("within",), "204 to 295 ohm"),
                (("within", "above"), "296 to 304 ohm"),
                (("above",), "305 ohm or more"),
            ],
        ),
        (
            "under 1 ohm", ("within", "above"),
            [
                (("within",), "0.6 ohm or less"),
                (("within", "above"), "0.7 to 1.3 ohm"),
                (("above",), "1.4 ohm or more"),
            ],
        ),
        (
            "under 10 ohm", ("within", "above", "open"),
            [
                (("within",), "9.6 ohm or less"),
                (("within", "above"), "9.7 to 10.3 ohm"),
                (("above",), "10.4 ohm or more, but not open"),
                (("open",), "open (over-range)"),
            ],
        ),
        (
            "open", ("below", "within"),
            [(("below",), "any number, but not open"), (("within",), "open (over-range)")],
        ),
        (
            "0.7 mm ± 0.1 mm", THREE,
            [
                (("below",), "under 0.6 mm"),
                (("within",), "0.6 to 0.8 mm"),
                (("above",), "over 0.8 mm"),
            ],
        ),
    ],
    ids=["source-coil", "primary", "stop-wire-off", "stop-wire-on", "gap-at-face-value"],
)  # fmt: skip
def test_bands_of_common_checks(
    limits: str, answers: tuple[str, ...], expected: list[tuple[tuple[str, ...], str]]
) -> None:
    """Each band says what the display must show, and what it then proves."""
    assert [(band.answers, band.words) for band in bands(limits, answers)] == expected


def test_a_guard_worked_by_hand() -> None:
    """At 0.6 ohm: bound 0.8 % + 3 digits = 0.3048, leads 0.15, u = 0.1961, guard 0.3226 ohm."""
    lowest = CHEAP.ranges_for("resistance")[0]
    bound = 0.006 * 0.8 + 3 * 0.1
    assert lowest.guard(0.6) == pytest.approx(ONE_SIDED_95 * sqrt((bound**2 + 0.15**2) / 3))
    assert 0.6 + lowest.guard(0.6) < 1 < 0.7 + lowest.guard(0.7)


@pytest.mark.parametrize(
    ("limits", "answers", "answer", "why"),
    [
        ("0.6 ohm ± 0.1 ohm", THREE, "within", "near 0.7 ohm it may be off by 0.33 ohm"),
        ("0.2-1 ohm", THREE, "below", "near 0.2 ohm it may be off by 0.32 ohm"),
        ("over 5 Mohm", ("below", "within"), "within", "its ranges end at 2 Mohm"),
        ("197 ohm ± 1 ohm", THREE, "within", "near 198 ohm it may be off by 1.8 ohm"),
    ],
)
def test_answers_no_display_proves_are_told(
    limits: str, answers: tuple[str, ...], answer: str, why: str
) -> None:
    """An answer this meter can never prove is named, with the numbers."""
    read = parse_limits(limits)
    shares = shares_of(answers, read, read.quantity)
    found = list(untold(shares, bands_of(shares, CHEAP, read.unit), CHEAP, read.unit))
    assert [(one.answer, one.why) for one in found] == [(answer, why)]


def test_it_cannot_tell_six_tenths_from_one_ohm() -> None:
    """Three answers around 0.6 and 1 ohm leave the middle one without a display."""
    unit = UNITS["ohm"]
    shares = shares_of(("under 0.6 ohm", "0.6-1 ohm", "over 1 ohm"), None, "resistance")
    assert [one.answer for one in untold(shares, bands_of(shares, CHEAP, unit), CHEAP, unit)] == [
        "0.6-1 ohm"
    ]


def test_a_better_meter_tells_more() -> None:
    """With 0.01 ohm steps and good leads, the same answers can be told apart."""
    fine = MeterRange(up_to="20 ohm", step="0.01 ohm", percent=0.2, digits=3)
    meter = parse_meter(MeterSheet(leads="0.05 ohm", ranges=(fine,)))
    unit = UNITS["ohm"]
    shares = shares_of(("under 0.6 ohm", "0.6-1 ohm", "over 1 ohm"), None, "resistance")
    assert list(untold(shares, bands_of(shares, meter, unit), meter, unit)) == []


def test_over_range_below_the_limit_proves_nothing() -> None:
    """A meter that ends at 2 Mohm cannot say that something is over 5 Mohm."""
    assert bands("over 5 Mohm", ("below", "within"))[-1].answers == ("below", "within")


@pytest.mark.parametrize(
    ("shown", "answers"),
    [
        ("0", ("below",)), ("198.2", ("below",)), ("198.3", ("below", "within")),
        ("250", ("within",)), ("300", ("within", "above")), ("Infinity", ("above",)),
    ],
)  # fmt: skip
def test_readings_are_judged_by_their_band(shown: str, answers: tuple[str, ...]) -> None:
    """A number on the display falls in the band that holds it."""
    assert judge(bands("200-300 ohm"), Decimal(shown)).answers == answers


@settings(max_examples=60, deadline=None, print_blob=True)
@given(
    st.decimals("0.1", "1500000", places=1),
    st.decimals("0", "1500000", places=1),
    st.booleans(),
)
def test_bands_are_honest_and_complete(low: Decimal, width: Decimal, has_open: bool) -> None:
    """Bands meet without gap, rise, and a proven one keeps its guard from both limits."""
    answers = (*THREE, "open") if has_open else THREE
    found = bands(f"{low}-{low + width} ohm", answers)
    assert found[0].low == 0
    assert found[-1].high == Decimal("Infinity")
    assert all(one.high < other.low for one, other in pairwise(found))
    ranges = CHEAP.ranges_for("resistance")
    for band in found:
        if band.answers == ("within",):
            for shown in (band.low, band.high):
                one = next(each for each in ranges if shown < each.full)
                guard = one.guard(float(shown))
                assert float(low) <= float(shown) - guard + 1e-6
                assert float(shown) + guard <= float(low + width) + 1e-6


@pytest.mark.parametrize(
    ("limits", "answers", "shown", "answer"),
    [
        ("under 10 ohm", ("within", "above", "open"), "9.65", ("within", "above")),
        ("under 10 ohm", ("within", "above", "open"), "10.35", ("within", "above")),
        ("open", ("below", "within"), "5000000", ("below",)),
        ("0.6-0.8 mm", THREE, "0.6", ("within",)),
        ("0.6-0.8 mm", THREE, "0.59", ("below",)),
        ("0.6 to under 0.8 mm", THREE, "0.8", ("above",)),
    ],
)
def test_numbers_between_two_displays_are_never_called(
    limits: str, answers: tuple[str, ...], shown: str, answer: tuple[str, ...]
) -> None:
    """What the display cannot show goes to the doubtful side; face value keeps the limits' ends."""
    assert judge(bands(limits, answers), Decimal(shown)).answers == answer


@settings(max_examples=60, deadline=None, print_blob=True)
@given(st.decimals("0", "2100000", places=3), st.sampled_from(["3-8 ohm", "0.6-1 ohm", "open"]))
def test_every_number_falls_in_one_band(shown: Decimal, limits: str) -> None:
    """No reading is without a verdict, and none has two."""
    assert len([band for band in bands(limits) if shown in band.interval]) == 1


def test_a_temperature_is_taken_at_its_word() -> None:
    """No multimeter range measures it."""
    assert CHEAP.ranges_for("temperature") == ()
    assert base_unit("temperature").name == "°C"
