"""Units: what may be written after a number."""

from __future__ import annotations

from decimal import Decimal

import pytest

from pullcord.model.quantity import QUANTITIES
from pullcord.readings.unit import UNITS, ReadingError, Unit, base_unit, parse_unit


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("ohm", "ohm"), ("Ω", "ohm"), ("\N{OHM SIGN}", "ohm"), ("ohms", "ohm"),
        ("kohm", "kohm"), ("k", "kohm"), ("kΩ", "kohm"), ("Mohm", "Mohm"), ("megohm", "Mohm"),
        ("mV", "mV"), ("Nm", "N m"), ("N  m", "N m"), ("ft lb", "ft lb"), ("cm³", "cc"),
        ("C", "°C"), ("inch", "in"), ("L", "l"), ("RPM", "rpm"), ("tooth", "teeth"), ("%", "%"),
    ],
)  # fmt: skip
def test_spellings_of_the_trade_are_read(written: str, name: str) -> None:
    """Every usual way to write a unit leads to the one unit."""
    assert parse_unit(written) is UNITS[name]


@pytest.mark.parametrize(
    ("written", "mend"),
    [
        ("mohm", "write `Mohm`: capitals count"),
        ("MV", "write `mV`: capitals count"),
        ("ohmm", "write `ohm`"),
        ("furlong", "use one of ohm, kohm"),
    ],
)
def test_an_unknown_unit_names_the_nearest(written: str, mend: str) -> None:
    """A million and a thousandth are never guessed at."""
    with pytest.raises(ReadingError) as caught:
        parse_unit(written)
    assert caught.value.mend.startswith(mend)
    assert f"`{written}`" in str(caught.value)


def test_every_quantity_has_a_base_unit() -> None:
    """Nothing a procedure may measure is without a unit."""
    assert {base_unit(quantity).quantity for quantity in QUANTITIES} == set(QUANTITIES)


@pytest.mark.parametrize("unit", UNITS.values(), ids=UNITS)
def test_units_go_there_and_back(unit: Unit) -> None:
    """What is turned to base units and back is what it was."""
    assert unit.from_base(unit.to_base(Decimal("12.34"))) == Decimal("12.34")


def test_over_range_stays_over_range() -> None:
    """Infinity has no unit to be turned into."""
    for unit in UNITS.values():
        assert unit.to_base(Decimal("Infinity")) == unit.from_base(Decimal("Infinity"))
