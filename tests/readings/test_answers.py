"""Answers: every reading has one, and only one."""

from __future__ import annotations

import pytest

from pullcord.readings.answers import check_cover, fault_words, share_of, shares_of
from pullcord.readings.interval import Cut
from pullcord.readings.limits import parse_limits
from pullcord.readings.unit import ReadingError, base_unit


def faults(answers: tuple[str, ...], limits: str = "") -> list[str]:
    """Return what is wrong with answers, in words."""
    read = parse_limits(limits) if limits else None
    unit = read.unit if read else base_unit("resistance")
    shares = shares_of(answers, read, unit.quantity)
    return [fault_words(fault, unit) for fault in check_cover(shares, unit.quantity)]


@pytest.mark.parametrize(
    ("answers", "limits"),
    [
        (("below", "within", "above"), "200-300 ohm"),
        (("below", "within", "above", "open"), "200-300 ohm"),
        (("within", "above"), "under 1 ohm"),
        (("within", "above", "open"), "up to 6 ohm"),
        (("below", "within"), "open"),
        (("below", "within"), "over 1 Mohm"),
        (("below", "within", "open"), "over 1 Mohm"),
        (("under 1 ohm", "1-3 ohm", "over 3 ohm"), ""),
        (("up to 1 ohm", "over 1 to under 3 ohm", "3 ohm or more"), ""),
        (("under 1 ohm", "1 ohm to 2 kohm", "over 2 kohm", "OL"), ""),
        (("below", "within", "above"), "-10 to 40 °C"),
        (("below", "within", "above"), "0.7 mm ± 0.1 mm"),
    ],
)
def test_complete_answers_are_left_alone(answers: tuple[str, ...], limits: str) -> None:
    """From nothing to over-range, each value has one answer."""
    assert faults(answers, limits) == []


@pytest.mark.parametrize(
    ("answers", "limits", "says"),
    [
        (("within", "above"), "200-300 ohm", ["no answer for a reading of under 200 ohm"]),
        (("below", "within"), "200-300 ohm", ["no answer for a reading of over 300 ohm"]),
        (
            ("within", "open"), "under 10 ohm",
            ["no answer for a reading of 10 ohm or more, but not open"],
        ),
        (
            ("below", "within", "above"), "under 1 ohm",
            ["answer `below` can never be given: no reading is left for it"],
        ),
        (
            ("under 1 ohm", "1-3 ohm", "3-5 ohm", "over 5 ohm"), "",
            ["answers `1-3 ohm` and `3-5 ohm` both stand for a reading of exactly 3 ohm"],
        ),
        (
            ("under 2 ohm", "1-3 ohm", "over 3 ohm"), "",
            ["answers `under 2 ohm` and `1-3 ohm` both stand for a reading of 1 to under 2 ohm"],
        ),
        (
            ("under 1 ohm", "over 1 ohm"), "",
            ["no answer for a reading of exactly 1 ohm"],
        ),
        (
            ("under 1 ohm", "2-3 ohm", "over 4 ohm"), "",
            [
                "no answer for a reading of 1 to under 2 ohm",
                "no answer for a reading of over 3 to 4 ohm",
            ],
        ),
        (
            ("under 5 ohm", "1-2 ohm", "5 ohm or more"), "",
            ["answers `under 5 ohm` and `1-2 ohm` both stand for a reading of 1 to 2 ohm"],
        ),
    ],
)  # fmt: skip
def test_gaps_and_overlaps_name_the_values(
    answers: tuple[str, ...], limits: str, says: list[str]
) -> None:
    """A reading without an answer, or with two, is named with its values."""
    assert faults(answers, limits) == says


def test_above_stops_short_of_open() -> None:
    """Where open has an answer of its own, above does not hold it as well."""
    limits = parse_limits("200-300 ohm")
    alone = share_of("above", ("below", "within", "above"), limits, "resistance")
    beside = share_of("above", ("below", "within", "above", "open"), limits, "resistance")
    assert alone.interval.end == Cut(beside.interval.end.value, 1)
    assert beside.interval.end.after == 0


def test_words_need_limits() -> None:
    """`within` means nothing without limits."""
    with pytest.raises(ReadingError, match="said of limits, and there are none"):
        share_of("within", ("within",), None, "resistance")


def test_an_answer_that_is_no_reading_is_refused() -> None:
    """A reading cannot be answered with a feeling."""
    with pytest.raises(ReadingError, match="answer `looks fine` says no reading"):
        share_of("looks fine", ("looks fine",), None, "resistance")
