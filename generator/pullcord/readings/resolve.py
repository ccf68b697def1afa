"""What one reading should show on one machine with one meter."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING, Literal

from pullcord.readings.answers import Share, check_cover, is_said_of_limits, shares_of
from pullcord.readings.asked import general_limits
from pullcord.readings.bands import Band, bands_of
from pullcord.readings.limits import Limits, parse_limits
from pullcord.readings.meter import Meter
from pullcord.readings.notes import dial_words, meter_notes
from pullcord.readings.sheet import NOT_KNOWN, value_limits
from pullcord.readings.temperature import TemperatureRow, temperature_table
from pullcord.readings.unit import ReadingError, Unit, base_unit

if TYPE_CHECKING:
    from pullcord.model.machine import Machine, SheetValue
    from pullcord.model.procedure import Reading

Origin = Literal["sheet", "general", "answers", "unknown"]

ORIGIN_WORDS: dict[Origin, str] = {
    "sheet": "from this machine's sheet",
    "general": "general limits, not this machine's own",
    "answers": "the answers say it",
    "unknown": NOT_KNOWN,
}


@dataclass(frozen=True)
class Resolved:
    """Everything a page says about one reading."""

    origin: Origin
    """Which limits apply."""
    limits: Limits | None
    """What a good one reads; None when nobody knows, or the answers say it themselves."""
    source: str
    """Where the limits come from; "" when nobody says."""
    shares: tuple[Share, ...]
    """What each answer stands for, lowest readings first; () when that cannot be said."""
    bands: tuple[Band, ...]
    """What the display proves, lowest first; () when the shares leave gaps or overlap."""
    is_at_face_value: bool
    """No instrument of the shop's is known for the quantity, so readings are taken as shown."""
    dial: str
    """The range to set, such as `2 kohm`; "" when it does not apply."""
    at_celsius: Decimal
    """The temperature the limits hold at."""
    temperatures: tuple[TemperatureRow, ...]
    """A copper winding's limits from a cold to a hot shop; () for anything else."""
    notes: tuple[str, ...]
    """What to keep in mind, most needed first."""

    @property
    def origin_words(self) -> str:
        """Return what the page says of where the limits stand."""
        return ORIGIN_WORDS[self.origin]


def for_machine(
    reading: Reading, answers: Sequence[str], machine: Machine | None, meter: Meter
) -> Resolved:
    """Return what a reading should show; `machine` None is the general page.

    The sheet's value wins; without it the reading's general limits stand, marked as general; else
    nothing is known. Answers that are limits themselves need neither. Figures that cannot be read
    count as not known here: the rules report them.
    """
    value = _sheet_value(reading, machine)
    origin, limits, source = _limits(reading, value, answers)
    shares = _shares(answers, limits, reading)
    unit = limits.unit if limits else _unit_of(answers, reading)
    celsius = Decimal(repr(value.at_celsius)) if value else Decimal(20)
    is_winding = value is not None and value.winding == "copper"
    sayable = limits or _widest(shares, unit)
    return Resolved(
        origin=origin,
        limits=limits,
        source=source,
        shares=shares,
        bands=_bands(shares, meter, unit),
        is_at_face_value=not meter.ranges_for(reading.quantity),
        dial=dial_words(sayable, meter) if sayable else "",
        at_celsius=celsius,
        temperatures=tuple(temperature_table(limits, celsius)) if limits and is_winding else (),
        notes=tuple(meter_notes(sayable, meter)) if sayable else (),
    )


def _sheet_value(reading: Reading, machine: Machine | None) -> SheetValue | None:
    return machine.values.get(reading.limits) if machine and reading.limits else None


def _limits(
    reading: Reading, value: SheetValue | None, answers: Sequence[str]
) -> tuple[Origin, Limits | None, str]:
    if value and (limits := value_limits(value, reading.quantity)):
        return "sheet", limits, value.source or ""
    if general := general_limits(reading):
        return "general", general, reading.source or ""
    if answers and not is_said_of_limits(answers):
        return "answers", None, reading.source or ""
    return "unknown", None, ""


def _shares(answers: Sequence[str], limits: Limits | None, reading: Reading) -> tuple[Share, ...]:
    try:
        return shares_of(answers, limits, reading.quantity)
    except ReadingError:
        return ()


def _bands(shares: tuple[Share, ...], meter: Meter, unit: Unit) -> tuple[Band, ...]:
    faults = [fault for fault in check_cover(shares, unit.quantity) if fault.kind != "never"]
    return bands_of(shares, meter, unit) if shares and not faults else ()


def _unit_of(answers: Sequence[str], reading: Reading) -> Unit:
    for answer in answers:
        try:
            return parse_limits(answer, reading.quantity).unit
        except ReadingError:
            continue
    return base_unit(reading.quantity)


def _widest(shares: Sequence[Share], unit: Unit) -> Limits | None:
    """Return the share with the largest number in it, for the dial and the notes."""
    numbered = [share for share in shares if not share.interval.is_only_open]
    if not numbered:
        return None
    return Limits(unit.quantity, numbered[-1].interval, unit)
