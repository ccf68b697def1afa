"""Metric and imperial side by side."""

from __future__ import annotations

import pytest

from pullcord.readings.amount import parse_amount
from pullcord.readings.both import amount_both, limits_both
from pullcord.readings.limits import parse_limits


@pytest.mark.parametrize(
    ("text", "both"),
    [
        ("0.7 mm ± 0.1 mm", "0.6 to 0.8 mm (0.024 to 0.031 in)"),
        ("0.028 in", "0.028 in (0.71 mm)"),
        ("12.7 mm", "12.7 mm (0.500 in)"),
        ("20-25 N m", "20 to 25 N m (15 to 18 ft lb)"),
        ("30 psi", "30 psi (207 kPa)"),
        ("up to 250 kPa", "up to 250 kPa (up to 36.3 psi)"),
        ("at least 700 kPa", "700 kPa or more (101.5 psi or more)"),
        ("-10 to 40 °C", "-10 to 40 °C (14 to 104 °F)"),
        ("200-300 ohm", "200 to 300 ohm"),
        ("78 links", "78 links"),
        ("open", "open (over-range)"),
    ],
)
def test_limits_are_shown_in_both(text: str, both: str) -> None:
    """A person with the other system's tool reads the same limits, as finely."""
    assert limits_both(parse_limits(text)) == both


def test_an_amount_is_shown_in_both() -> None:
    """A single figure too; what has no twin stands alone."""
    assert amount_both(parse_amount("12.7 mm")) == "12.7 mm (0.500 in)"
    assert amount_both(parse_amount("1400 rpm")) == "1400 rpm"
