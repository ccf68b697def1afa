"""Metric and imperial side by side, as tools and gauges come in both.

Factors are those of `pullcord.readings.unit`, exact by definition. The added figure is rounded to
about the fineness of the one it stands beside.
"""

from __future__ import annotations

from decimal import Decimal

from pullcord.readings.amount import Amount, amount_text, number_text
from pullcord.readings.limits import Limits
from pullcord.readings.unit import UNITS, Unit

TWINS = {
    "mm": "in", "cm": "in", "m": "ft", "in": "mm", "ft": "m", "kPa": "psi", "bar": "psi",
    "psi": "kPa", "°C": "°F", "°F": "°C", "N m": "ft lb", "ft lb": "N m",
}  # fmt: skip
"""The unit of the other system, by unit name."""


MM_PER_INCH = 25.4
COARSER = Decimal("1.5")
"""How much coarser the other figure's last digit may be."""


def twin_text(number: Decimal, unit: Unit) -> str:
    """Return the same amount in the other system, or "" when there is only one."""
    other = UNITS.get(TWINS.get(unit.name, ""))
    if other is None or not number.is_finite():
        return ""
    exact = other.from_base(unit.to_base(number))
    return amount_text(exact, other, _places(number, unit, other))


def amount_both(amount: Amount) -> str:
    """Return an amount in both systems: `12.7 mm (0.500 in)`."""
    twin = twin_text(amount.number, amount.unit)
    return f"{amount} ({twin})" if twin else str(amount)


def limits_both(limits: Limits) -> str:
    """Return limits in both systems: `0.6 to 0.8 mm (0.024 to 0.031 in)`."""
    other = UNITS.get(TWINS.get(limits.unit.name, ""))
    edges = [cut.value for cut in (limits.interval.start, limits.interval.end)]
    numbers = [limits.unit.from_base(edge) for edge in edges if edge.is_finite() and edge]
    if other is None or not numbers:
        return limits.words
    places = max(_places(number, limits.unit, other) for number in numbers)
    return f"{limits.words} ({limits.words_in(other, places)})"


def length_both(length_mm: float) -> str:
    """Return a worked-out length to a tenth of a millimetre and a thousandth of an inch."""
    return f"{length_mm:.1f} mm ({length_mm / MM_PER_INCH:.3f} in)"


def _places(number: Decimal, unit: Unit, other: Unit) -> int:
    """Return decimals that make the other figure's last digit about as fine as this one's."""
    written = number_text(number)
    step = Decimal(1).scaleb(-len(written.partition(".")[2])) * unit.factor
    places = 0
    while Decimal(1).scaleb(-places) * other.factor > step * COARSER:
        places += 1
    return places
