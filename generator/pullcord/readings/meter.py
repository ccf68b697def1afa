"""What an instrument can show, and how far what it shows may be off.

A leaflet states ± (percent of reading + digits), taken here as the half-width of a rectangular
distribution. For resistance, what the test leads add is taken off after holding the probes
together; as probes never bite twice alike, half of it is kept as a further bound (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from pullcord.model.quantity import Quantity
from pullcord.readings.amount import parse_amount
from pullcord.readings.uncertainty import (
    combined_uncertainty,
    guard_band,
    rectangular_uncertainty,
)
from pullcord.readings.unit import ReadingError, Unit

if TYPE_CHECKING:
    from pullcord.model.meter import MeterRange, MeterSheet

MOST_COUNTS = 100_000


@dataclass(frozen=True)
class Range:
    """One position of the dial. Numbers are in base units unless they say otherwise."""

    quantity: Quantity
    unit: Unit
    """The unit its end was written in: what stands on the dial."""
    full: Decimal
    """Where over-range begins."""
    step: Decimal
    """The last digit."""
    percent: float
    """Of the reading."""
    digits: int
    """Steps of the last digit."""
    leads: float = 0.0
    """Half-width of what the leads leave in doubt once they are taken off."""

    def bound(self, shown: float) -> float:
        """Return how far a reading may be off by the leaflet, without the leads."""
        return abs(shown) * self.percent / 100 + self.digits * float(self.step)

    def uncertainty(self, shown: float) -> float:
        """Return the standard uncertainty of a reading, leads included."""
        bounds = (self.bound(shown), self.leads)
        return combined_uncertainty([rectangular_uncertainty(bound) for bound in bounds])

    def guard(self, shown: float) -> float:
        """Return how far from a limit a reading must keep to be judged."""
        return guard_band(self.uncertainty(shown))

    @property
    def dial(self) -> str:
        """Return what stands on the dial: `200 ohm`."""
        return f"{self.unit.from_base(self.full).normalize():f} {self.unit.name}"


@dataclass(frozen=True)
class Meter:
    """A shop's instruments."""

    title: str
    leads_ohm: Decimal
    """What it shows with the probes held together."""
    ranges: tuple[Range, ...]
    """By quantity, smallest range first."""

    def ranges_for(self, quantity: Quantity) -> tuple[Range, ...]:
        """Return the ranges that measure a quantity, smallest first; () when none does."""
        return tuple(one for one in self.ranges if one.quantity == quantity)


def parse_meter(sheet: MeterSheet) -> Meter:
    """Return the meter a sheet describes; raise `ReadingError` for the first thing wrong in it."""
    for _, error in meter_faults(sheet):
        raise error
    leads = parse_amount(sheet.leads, "resistance").base
    ranges = (_range(row, leads) for row in sheet.ranges)
    return Meter(
        sheet.title, leads, tuple(sorted(ranges, key=lambda one: (one.quantity, one.full)))
    )


def meter_faults(sheet: MeterSheet) -> Iterator[tuple[tuple[str | int, ...], ReadingError]]:
    """Yield the place and the error of everything wrong in a meter sheet."""
    try:
        leads = parse_amount(sheet.leads, "resistance").base
    except ReadingError as error:
        yield ("leads",), error
        leads = Decimal(0)
    for position, row in enumerate(sheet.ranges):
        try:
            _range(row, leads)
        except ReadingError as error:
            yield ("ranges", position), error


def _range(row: MeterRange, leads: Decimal) -> Range:
    full, step = parse_amount(row.up_to), parse_amount(row.step)
    if full.unit.quantity == "temperature":
        raise ReadingError(
            f"range `{row.up_to}`: a thermometer is taken at its word", "leave this range out"
        )
    if step.unit.quantity != full.unit.quantity:
        raise ReadingError(
            f"range `{row.up_to}` has a step of {step}, a {step.unit.quantity}",
            f"give the step in a unit of {full.unit.quantity}",
        )
    if not 0 < step.base < full.base or full.base / step.base > MOST_COUNTS:
        raise ReadingError(
            f"range `{row.up_to}` cannot have a step of {step}",
            "the step is the last digit of the display, such as `0.1 ohm` on `200 ohm`",
        )
    is_resistance = full.unit.quantity == "resistance"
    return Range(
        quantity=full.unit.quantity,
        unit=full.unit,
        full=full.base,
        step=step.base,
        percent=row.percent,
        digits=row.digits,
        leads=float(leads) / 2 if is_resistance else 0.0,
    )
