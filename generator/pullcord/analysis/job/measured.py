"""What an entry measured: which value, held against which limits, and what the meter proves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from pullcord.model.job import Entry
from pullcord.model.machine import Machine, SheetValue
from pullcord.model.procedure import Reading, Step
from pullcord.model.quantity import Quantity
from pullcord.readings.amount import parse_amount
from pullcord.readings.answers import check_cover, shares_of
from pullcord.readings.asked import general_limits
from pullcord.readings.bands import Band, bands_of, judge
from pullcord.readings.interval import OPEN
from pullcord.readings.limits import Limits, parse_limits
from pullcord.readings.meter import Meter
from pullcord.readings.sheet import value_limits
from pullcord.readings.temperature import limits_at
from pullcord.readings.unit import ReadingError, Unit, base_unit

Verdict = Literal["within", "outside", "too close", "not judged"]
JUDGED = ("below", "within", "above")


@dataclass(frozen=True)
class Shown:
    """What an instrument showed."""

    base: Decimal
    """In base units; infinity for over-range."""
    unit: Unit
    """The unit it was written in."""
    digit: Decimal
    """What one step of the last written digit is worth, in base units; 0 for over-range."""

    @property
    def is_over(self) -> bool:
        """Say whether it was over-range."""
        return self.base == OPEN


@dataclass(frozen=True)
class Measured:
    """One thing that can be measured on this machine."""

    name: str
    """The sheet value's name, or `procedure.step`."""
    title: str
    quantity: Quantity | None
    """None when the sheet does not say; the reading's unit says it then."""
    limits: Limits | None
    """What a good one reads; None when nobody knows."""
    copper_celsius: Decimal | None
    """For a copper winding, the temperature its limits hold at."""

    def limits_in(self, celsius: float | None) -> Limits | None:
        """Return the limits at the temperature of the shop; as stated when it is not known."""
        if self.limits is None or celsius is None or self.copper_celsius is None:
            return self.limits
        return limits_at(self.limits, Decimal(repr(celsius)), self.copper_celsius)


def parse_shown(text: str, quantity: Quantity | None = None) -> Shown:
    """Read `250 ohm`, or `OL` for over-range; raise `ReadingError` that says what is wrong."""
    try:
        amount = parse_amount(text, quantity)
    except ReadingError:
        if not _is_over(text, quantity):
            raise
        return Shown(OPEN, base_unit(quantity or "resistance"), Decimal(0))
    exponent = amount.number.as_tuple().exponent
    digit = Decimal(1).scaleb(exponent if isinstance(exponent, int) else 0)
    return Shown(amount.base, amount.unit, digit * amount.unit.factor)


def shown_in(entry: Entry, measured: Measured) -> Shown | None:
    """Return what an entry's instrument showed; None when there is nothing that can be read."""
    try:
        return parse_shown(entry.reading, measured.quantity) if entry.reading else None
    except ReadingError:
        return None


def measured_in(entry: Entry, step: Step | None, machine: Machine | None) -> Measured | None:
    """Return what an entry measured, or None when it names nothing that is measured."""
    if step is not None and step.reading is not None:
        return _of_step(entry, step, step.reading, machine)
    value = _value(machine, entry.value)
    return _of_value(entry.value, value) if entry.value and value else None


def judged(measured: Measured, entry: Entry, shown: Shown, meter: Meter) -> Verdict:
    """Return what a reading proves, the meter's uncertainty and the shop's warmth in mind."""
    limits = measured.limits_in(entry.celsius)
    if limits is None:
        return "not judged"
    band = _band(JUDGED, limits, limits.quantity, limits.unit, meter, shown)
    if band is None:
        return "not judged"
    if band.is_close:
        return "too close" if "within" in band.answers else "outside"
    return "within" if band.answers == ("within",) else "outside"


def answer_proved(
    step: Step, measured: Measured, entry: Entry, shown: Shown, meter: Meter
) -> str | None:
    """Return the answer of a step that a reading proves; None when it proves none."""
    if step.reading is None:
        return None
    limits = measured.limits_in(entry.celsius)
    unit = limits.unit if limits else shown.unit
    band = _band(tuple(step.answers), limits, step.reading.quantity, unit, meter, shown)
    return band.answers[0] if band and not band.is_close else None


def _band(
    answers: Sequence[str],
    limits: Limits | None,
    quantity: Quantity,
    unit: Unit,
    meter: Meter,
    shown: Shown,
) -> Band | None:
    """Return the band a reading falls in; None when the answers do not cover every reading."""
    try:
        shares = shares_of(answers, limits, quantity)
    except ReadingError:
        return None
    faults = [fault for fault in check_cover(shares, quantity) if fault.kind != "never"]
    if faults or not shares or shown.unit.quantity != quantity:
        return None
    return judge(bands_of(shares, meter, unit), shown.base)


def _of_step(entry: Entry, step: Step, reading: Reading, machine: Machine | None) -> Measured:
    value = _value(machine, reading.limits)
    limits = value_limits(value, reading.quantity) or general_limits(reading)
    if reading.limits and value:
        own = _of_value(reading.limits, value)
        return replace(own, quantity=reading.quantity, limits=limits)
    name = f"{entry.procedure}.{entry.step}"
    return Measured(name, step.title, reading.quantity, limits, None)


def _value(machine: Machine | None, name: str | None) -> SheetValue | None:
    return machine.values.get(name) if machine and name else None


def _of_value(name: str, value: SheetValue) -> Measured:
    limits = value_limits(value)
    quantity = value.quantity or (limits.quantity if limits else None)
    celsius = Decimal(repr(value.at_celsius)) if value.winding == "copper" else None
    title = value.title or name.replace("-", " ").capitalize()
    # A figure such as `78 links` is not judged: it says what is fitted, not what is good.
    return Measured(name, title, quantity, limits if value.limits else None, celsius)


def _is_over(text: str, quantity: Quantity | None) -> bool:
    try:
        return parse_limits(text, quantity).interval.is_only_open
    except ReadingError:
        return False
