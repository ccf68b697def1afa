"""Copper's resistance goes with its temperature, so a cold shop reads low and a hot engine high.

R(t) = R(s) · (1 + α20·(t − 20)) / (1 + α20·(s − 20)), t and s in °C, with α20 = 0.00393 per K for
annealed copper: the International Annealed Copper Standard (IEC 60028:1925; NBS Handbook 100), as
quoted in the Industrial Power Engineering Handbook, p. 970. The trade's rule
(234.5 + t)/(234.5 + s) is the same line: 1/(234.5 + 20) = 0.003929.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from pullcord.readings.interval import Cut, Interval
from pullcord.readings.limits import Limits

ALPHA_20 = Decimal("0.00393")
"""Rise of copper's resistance per kelvin, as a share of its resistance at 20 °C."""

TABLE_CELSIUS = (-10, 0, 10, 20, 30, 40)
"""The shop temperatures a page lists."""

SOURCE = "copper, 0.00393 per °C at 20 °C (IEC 60028)"


@dataclass(frozen=True)
class TemperatureRow:
    """Limits at one temperature."""

    celsius: int
    limits: Limits


def copper_factor(celsius: Decimal, stated_celsius: Decimal = Decimal(20)) -> Decimal:
    """Return the resistance at one temperature over that at the stated one; both in °C."""
    return (1 + ALPHA_20 * (celsius - 20)) / (1 + ALPHA_20 * (stated_celsius - 20))


def limits_at(limits: Limits, celsius: Decimal, stated_celsius: Decimal = Decimal(20)) -> Limits:
    """Return a copper winding's limits at a temperature, to three significant digits."""
    if celsius == stated_celsius:
        return limits
    factor = copper_factor(celsius, stated_celsius)
    start, end = (_scaled(cut, factor) for cut in (limits.interval.start, limits.interval.end))
    nominal = None if limits.nominal is None else _rounded(limits.nominal * factor)
    return replace(limits, interval=Interval(start, end), nominal=nominal)


def temperature_table(limits: Limits, stated_celsius: Decimal) -> Iterator[TemperatureRow]:
    """Yield a copper winding's limits at each temperature a page lists."""
    for celsius in TABLE_CELSIUS:
        yield TemperatureRow(celsius, limits_at(limits, Decimal(celsius), stated_celsius))


def _scaled(cut: Cut, factor: Decimal) -> Cut:
    return Cut(_rounded(cut.value * factor), cut.after) if cut.value.is_finite() else cut


def _rounded(number: Decimal) -> Decimal:
    """Round to three significant digits: about what a cheap meter shows."""
    return round(number, 2 - number.adjusted()) if number else number
