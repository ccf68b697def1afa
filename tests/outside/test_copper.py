"""Copper's resistance by temperature, length and gauge."""

from __future__ import annotations

from decimal import Decimal

import pytest

from pullcord.readings.temperature import ALPHA_20, copper_factor
from pullcord.readings.wire import awg_area_mm2, awg_diameter_mm, copper_resistance_ohm

METRES_PER_1000_FEET = 304.8


def test_coefficient() -> None:
    """0.00393 per K: IACS, as quoted in the Industrial Power Engineering Handbook, p. 970."""
    assert Decimal("0.00393") == ALPHA_20


@pytest.mark.parametrize(("celsius", "ratio"), [(75, 1.2162), (-10, 0.8821)])
def test_ratios_of_that_coefficient(celsius: int, ratio: float) -> None:
    """Computed from the coefficient above; not an outside value of its own."""
    assert float(copper_factor(Decimal(celsius))) == pytest.approx(ratio, abs=5e-5)


@pytest.mark.parametrize("celsius", [-40, -10, 0, 10, 30, 40, 75, 100, 120])
def test_the_trades_rule_agrees(celsius: int) -> None:
    """(234.5 + t) / (234.5 + 20), the inferred-zero rule of circuit textbooks, within 0.05 %.

    The rule is as printed on a circuit-analysis page ("inferred absolute temperature", -234.5 °C).
    """
    rule = (234.5 + celsius) / (234.5 + 20)
    assert float(copper_factor(Decimal(celsius))) == pytest.approx(rule, rel=5e-4)


def test_textbook_example() -> None:
    """50 ohm at 20 °C is 65.72 ohm at 100 °C (a textbook's worked example, from memory)."""
    assert 50 * float(copper_factor(Decimal(100))) == pytest.approx(65.72, abs=0.01)


@pytest.mark.parametrize(
    ("gauge", "ohm"),
    [
        (10, 0.9989), (12, 1.588), (14, 2.525), (16, 4.016),
        (18, 6.385), (20, 10.15), (22, 16.14), (24, 25.67),
    ],
)  # fmt: skip
def test_wire_table(gauge: int, ohm: float) -> None:
    """Ohm per 1000 ft at 20 °C: HyperPhysics wire table, which credits Floyd, Electric Circuit
    Fundamentals, 2nd edition. Ours follow IEC 60028's resistivity and agree within 0.05 %."""
    ours = copper_resistance_ohm(awg_area_mm2(gauge), METRES_PER_1000_FEET)
    assert ours == pytest.approx(ohm, rel=5e-4)


def test_resistivity() -> None:
    """0.017241 ohm·mm²/m, 58 MS/m: IEC 60028:1925, as quoted on a page about that standard."""
    assert copper_resistance_ohm(1, 1) == pytest.approx(1 / 58, rel=1e-4)


@pytest.mark.parametrize(("gauge", "inch"), [(36, 0.005), (-3, 0.46)])
def test_gauge_ends(gauge: int, inch: float) -> None:
    """By definition of the gauge (ASTM B258, as commonly quoted): No. 36 and No. 0000."""
    assert awg_diameter_mm(gauge) / 25.4 == pytest.approx(inch, rel=1e-9)
