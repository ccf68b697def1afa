"""Limits: every way to write them, and every way to get them wrong."""

from __future__ import annotations

from contextlib import suppress
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.model.quantity import Quantity
from pullcord.readings.interval import OPEN
from pullcord.readings.limits import parse_limits
from pullcord.readings.unit import UNITS, ReadingError


@pytest.mark.parametrize(
    ("text", "words", "short"),
    [
        ("250 ohm", "250 ohm", "250 Ω"),
        ("0.7 mm", "0.7 mm", "0.7 mm"),
        ("2-3 kohm", "2 to 3 kohm", "2–3 kΩ"),
        ("2 – 3 kΩ", "2 to 3 kohm", "2–3 kΩ"),
        ("900 ohm - 1.1 kohm", "0.9 to 1.1 kohm", "0.9–1.1 kΩ"),
        ("under 1 ohm", "under 1 ohm", "< 1 Ω"),
        ("< 1 ohm", "under 1 ohm", "< 1 Ω"),
        ("up to 6 ohm", "up to 6 ohm", "≤ 6 Ω"),
        ("0-6 ohm", "up to 6 ohm", "≤ 6 Ω"),
        ("over 1 Mohm", "over 1 Mohm", "> 1 MΩ"),
        ("at least 12 V", "12 V or more", "≥ 12 V"),
        ("12 V or more", "12 V or more", "≥ 12 V"),
        ("0.7 mm ± 0.1 mm", "0.6 to 0.8 mm", "0.6–0.8 mm"),
        ("0.7 ± 0.1 mm", "0.6 to 0.8 mm", "0.6–0.8 mm"),
        ("250 ohm ± 10 %", "225 to 275 ohm", "225–275 Ω"),
        ("250 ohm +/- 10 %", "225 to 275 ohm", "225–275 Ω"),
        ("20 % ± 2 %", "18 to 22 %", "18–22 %"),
        ("8 ft lb ± 10 %", "7.2 to 8.8 ft lb", "7.2–8.8 ft lb"),
        ("over 3 to 5 ohm", "over 3 to 5 ohm", "3–5 Ω"),
        ("1 to under 3 ohm", "1 to under 3 ohm", "1–3 Ω"),
        ("-10 to 40 °C", "-10 to 40 °C", "-10–40 °C"),
        ("50:1", "50:1", "50:1"),
        ("78 links", "78 links", "78 links"),
        ("OL", "open (over-range)", "open"),
        ("open", "open (over-range)", "open"),
    ],
)
def test_limits_are_read(text: str, words: str, short: str) -> None:
    """What an author writes comes out in words and in short."""
    limits = parse_limits(text)
    assert (limits.words, limits.short) == (words, short)


@pytest.mark.parametrize(
    ("text", "inside", "outside"),
    [
        ("200-300 ohm", ["200", "250", "300"], ["199.999", "300.001", "Infinity"]),
        ("under 1 ohm", ["0", "0.999"], ["1", "Infinity"]),
        ("up to 1 ohm", ["0", "1"], ["1.001"]),
        ("over 1 kohm", ["1000.1", "Infinity"], ["1000"]),
        ("open", ["Infinity"], ["0", "1999000"]),
    ],
)
def test_ends_count_as_written(text: str, inside: list[str], outside: list[str]) -> None:
    """Closed ends belong to the limits, open ends do not; over-range is above everything."""
    limits = parse_limits(text)
    assert all(Decimal(value) in limits for value in inside)
    assert not any(Decimal(value) in limits for value in outside)


@pytest.mark.parametrize(
    ("text", "quantity", "says", "mend"),
    [
        ("300-200 ohm", None, "runs backwards: 300 is more than 200", "write `200-300 ohm`"),
        ("2-1 kohm", None, "runs backwards", "write `1-2 kohm`"),
        ("250", None, "has no unit", "write it like `250 ohm`"),
        ("250 ± 10 %", None, "has no unit", "write `200-300 ohm`"),
        ("250 volt ohm", None, "`volt ohm` is no unit", ""),
        ("200-300 V", "resistance", "is a voltage, but a resistance is measured", "write it in"),
        ("2 V - 3 ohm", None, "is a voltage, but a resistance is measured", "write it in"),
        ("0.7 mm", "resistance", "is a length, but a resistance is measured", "write it in"),
        ("-10 ohm", None, "goes below zero", "start at 0 ohm"),
        ("250 ohm ± 120 %", None, "spreads over more than all of it", "write"),
        ("1 ohm ± 2 ohm", None, "goes below zero", "start at 0 ohm"),
        ("999999999 Mohm ± 999999999 %", None, "spreads over more than all of it", "write"),
        ("-300 °C", None, "goes below absolute zero", "start at -273.15 °C"),
        ("under 0 ohm", None, "holds nothing at all", "write"),
        ("1,000 ohm", None, "has a comma in a number", "write `1000`"),
        ("about right", None, "cannot be read as limits", "write"),
        ("", None, "cannot be read as limits", "write"),
        ("9999999999 Mohm", None, "too large to be meant", "larger unit"),
    ],
)
def test_what_is_wrong_is_said(text: str, quantity: Quantity | None, says: str, mend: str) -> None:
    """Limits that cannot be used say why, in the author's own words, and what to write."""
    with pytest.raises(ReadingError) as caught:
        parse_limits(text, quantity)
    assert says in str(caught.value)
    assert mend in caught.value.mend


def test_open_takes_the_quantity_that_is_measured() -> None:
    """A gauge can be over-range too."""
    assert parse_limits("open", "pressure").quantity == "pressure"


def test_a_count_needs_no_unit() -> None:
    """Links and teeth are plain numbers."""
    assert parse_limits("9-11", "count").words == "9 to 11"


@settings(max_examples=100, deadline=None, print_blob=True)
@given(st.text(max_size=40))
def test_no_text_breaks_the_reader(text: str) -> None:
    """Any text is either read or refused with a reason."""
    with suppress(ReadingError):
        assert not parse_limits(text).interval.is_empty


NUMBERS = st.sampled_from(["0", "999999999", "0.000000000000000001", "-5", "12.5"])


@settings(max_examples=100, deadline=None, print_blob=True)
@given(
    st.sampled_from(
        [
            "{0} {2}-{1} {3}",
            "{0} {2} ± {1} {3}",
            "under {0} {2}",
            "{0} {2} ± {1} %",
            "{1} {3} or more",
        ]
    ),
    NUMBERS,
    NUMBERS,
    st.sampled_from(list(UNITS)),
    st.sampled_from(list(UNITS)),
)
def test_no_figure_breaks_the_reader(
    form: str, one: str, other: str, unit: str, other_unit: str
) -> None:
    """Huge, tiny and negative figures in any units are read or refused, and can be printed."""
    with suppress(ReadingError):
        limits = parse_limits(form.format(one, other, unit, other_unit))
        assert limits.words
        assert limits.short


@settings(max_examples=100, deadline=None, print_blob=True)
@given(
    st.decimals("0", "999", places=2),
    st.decimals("0", "999", places=2),
    st.sampled_from(["ohm", "kohm", "mm", "in", "psi", "°F", "N m"]),
)
def test_words_say_the_same_limits(low: Decimal, high: Decimal, unit: str) -> None:
    """The words a page prints can be read back, and mean the same."""
    low, high = sorted((low, high))
    limits = parse_limits(f"{low}-{high} {unit}")
    assert parse_limits(limits.words).interval == limits.interval
    assert limits.interval.end.value != OPEN
