"""Units against pint, whose definitions follow the SI Brochure and NIST SP 811."""

from __future__ import annotations

from decimal import Decimal

import pint
import pytest

from pullcord.readings.unit import UNITS, base_unit

REGISTRY = pint.UnitRegistry()

PINT = {
    "ohm": "ohm", "kohm": "kiloohm", "Mohm": "megaohm", "V": "volt", "mV": "millivolt",
    "kV": "kilovolt", "A": "ampere", "mA": "milliampere", "mm": "millimeter",
    "cm": "centimeter", "m": "meter", "in": "inch", "ft": "foot", "kPa": "kilopascal",
    "bar": "bar", "psi": "psi", "rpm": "revolution/minute", "s": "second", "min": "minute",
    "h": "hour", "ml": "milliliter", "cc": "cubic_centimeter", "l": "liter", "°C": "degC",
    "°F": "degF", "N m": "newton*meter", "ft lb": "foot*pound_force", "Hz": "hertz",
    "kHz": "kilohertz", "nF": "nanofarad", "µF": "microfarad", "%": "percent",
}  # fmt: skip
PLAIN_NUMBERS = {"count", "links", "teeth", "turns", ":1"}
"""Counts and plain ratios, which no unit library need tell us."""


@pytest.mark.parametrize(("name", "theirs"), PINT.items(), ids=PINT)
def test_factors(name: str, theirs: str) -> None:
    """12.5 of each unit is the same number of base units by pint."""
    unit = UNITS[name]
    base = base_unit(unit.quantity)
    target = "dimensionless" if unit.quantity == "ratio" else PINT[base.name]
    expected = REGISTRY.Quantity(12.5, theirs).to(target).magnitude
    assert float(unit.to_base(Decimal("12.5"))) == pytest.approx(expected, rel=1e-9)


def test_no_unit_goes_unchecked() -> None:
    """Every unit of the table is held against pint or is a plain number."""
    assert set(UNITS) == set(PINT) | PLAIN_NUMBERS
