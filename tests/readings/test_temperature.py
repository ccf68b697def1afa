"""Copper windings in a cold and a hot shop."""

from __future__ import annotations

from decimal import Decimal

from pullcord.readings.limits import parse_limits
from pullcord.readings.temperature import limits_at, temperature_table


def test_the_table_runs_from_a_frosty_to_a_hot_shop() -> None:
    """Limits stated at 20 °C come unchanged at 20 °C, lower in the cold, higher in the heat."""
    rows = temperature_table(parse_limits("250 ohm ± 10 %"), Decimal(20))
    assert [(row.celsius, row.limits.words) for row in rows] == [
        (-10, "198 to 243 ohm"),
        (0, "207 to 253 ohm"),
        (10, "216 to 264 ohm"),
        (20, "225 to 275 ohm"),
        (30, "234 to 286 ohm"),
        (40, "243 to 297 ohm"),
    ]


def test_a_sheet_may_state_another_temperature() -> None:
    """Limits measured on a hot engine are lower in the shop."""
    hot = parse_limits("200-300 ohm")
    assert limits_at(hot, Decimal(60), Decimal(60)) is hot
    assert limits_at(hot, Decimal(20), Decimal(60)).words == "173 to 259 ohm"


def test_open_and_nothing_stay() -> None:
    """An open end stays open, and zero stays zero, at any temperature."""
    cold = Decimal(-10)
    assert limits_at(parse_limits("open"), cold).words == "open (over-range)"
    assert limits_at(parse_limits("under 1 ohm"), cold).words == "under 0.882 ohm"
    assert limits_at(parse_limits("over 5 kohm"), cold).words == "over 4.41 kohm"
