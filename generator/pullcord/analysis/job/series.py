"""Every reading over time, what the meter leaves in doubt about it, and whether it drifts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from math import hypot

from pullcord.analysis.job.given import Given
from pullcord.analysis.job.measured import Measured, Shown
from pullcord.analysis.job.noted import Noted
from pullcord.analysis.job.report import Point, Series
from pullcord.readings.amount import amount_text
from pullcord.readings.bands import range_for
from pullcord.readings.interval import Cut, Interval
from pullcord.readings.limits import Limits
from pullcord.readings.meter import Meter
from pullcord.readings.temperature import ALPHA_20, copper_factor
from pullcord.readings.uncertainty import rectangular_uncertainty
from pullcord.readings.unit import Unit

COVERAGE = 1.96
"""Standard uncertainties to a two-sided 95 % (normal distribution; JCGM 100:2008, G.1.3, from
memory)."""
UNKNOWN_PERCENT = 2.0
"""What an instrument nobody has described may be off, in percent (common practice)."""
SHOP_KELVINS = 15.0
"""How far from 20 °C a shop may be that nobody took the temperature of (common practice)."""
PLACES = 3
"""Significant digits a change is told with."""


@dataclass(frozen=True)
class _Taken:
    """One reading as it was taken."""

    note: Noted
    measured: Measured
    shown: Shown


def read_series(given: Given) -> tuple[Series, ...]:
    """Return every series of readings, in the order of their first ones.

    Readings of a copper winding are turned to the temperature its limits hold at, where somebody
    wrote down how warm the shop was; they are judged as they were shown.
    """
    found: dict[str, list[_Taken]] = {}
    for note in given.notes:
        if note.measured is None or note.shown is None:
            continue
        taken = found.setdefault(note.measured.name, [])
        if not taken or taken[0].shown.unit.quantity == note.shown.unit.quantity:
            taken.append(_Taken(note, note.measured, note.shown))
    return tuple(_series(given, name, taken) for name, taken in found.items())


def half_width(shown: Shown, meter: Meter) -> float:
    """Return the uncertainty of a reading in base units, for 95 % coverage.

    An instrument nobody has described is taken to be good to `UNKNOWN_PERCENT` and one step of the
    last digit that was written. 0 for over-range.
    """
    if shown.is_over:
        return 0.0
    ranges = meter.ranges_for(shown.unit.quantity)
    value = abs(shown.base)
    if not ranges:
        bound = float(value) * UNKNOWN_PERCENT / 100 + float(shown.digit)
        return COVERAGE * rectangular_uncertainty(bound)
    return COVERAGE * range_for(ranges, value).uncertainty(float(value))


def _series(given: Given, name: str, taken: list[_Taken]) -> Series:
    first = taken[0]
    limits = first.measured.limits
    unit = limits.unit if limits else first.shown.unit
    points = tuple(_point(given, each, unit) for each in taken)
    return Series(
        name=name,
        title=first.measured.title,
        unit=unit,
        limits=_in_unit(limits) if limits else None,
        points=points,
        drift=_drift(points, [_warmth(each, unit) for each in taken], unit),
    )


def _point(given: Given, taken: _Taken, unit: Unit) -> Point:
    shown = taken.shown
    factor = float(unit.factor)
    return Point(
        date=taken.note.entry.date,
        entry=taken.note.place,
        amount=None if shown.is_over else float(unit.from_base(_at_stated(taken))),
        text=taken.note.entry.reading or "",
        half_width=half_width(shown, given.meter) / factor,
        verdict=taken.note.verdict,
    )


def _at_stated(taken: _Taken) -> Decimal:
    """Return a reading as it would be at the temperature its limits hold at."""
    stated, celsius = taken.measured.copper_celsius, taken.note.entry.celsius
    if stated is None or celsius is None:
        return taken.shown.base
    return taken.shown.base / copper_factor(Decimal(repr(celsius)), stated)


def _in_unit(limits: Limits) -> Interval:
    start, end = limits.interval.start, limits.interval.end

    def turned(cut: Cut) -> Cut:
        return Cut(limits.unit.from_base(cut.value), cut.after)

    return Interval(turned(start), turned(end))


def _warmth(taken: _Taken, unit: Unit) -> float:
    """Return what a copper winding's unknown temperature leaves in doubt, as `half_width` does."""
    if taken.measured.copper_celsius is None or taken.note.entry.celsius is not None:
        return 0.0
    bound = float(taken.shown.base) * float(ALPHA_20) * SHOP_KELVINS / float(unit.factor)
    return 0.0 if taken.shown.is_over else COVERAGE * rectangular_uncertainty(bound)


def _drift(points: Sequence[Point], warmths: Sequence[float], unit: Unit) -> str:
    """Return what to say when first and last differ by more than the meter explains.

    The doubt about a difference of two readings is the root of the sum of the squares of both
    (JCGM 100:2008, 5.1.2, equation (10), from memory). Both being of one meter, whose errors are
    partly the same, this errs on the side of saying nothing.
    """
    first, last = points[0], points[-1]
    if first.amount is None or last.amount is None:
        if first.amount is last.amount:
            return ""
        return f"It read {first.text} on {first.date[:10]}, but {last.text} on {last.date[:10]}."
    change = last.amount - first.amount
    doubt = hypot(first.half_width, last.half_width, warmths[0], warmths[-1])
    if abs(change) <= doubt:
        return ""
    way = "up" if change > 0 else "down"
    explains = "meter and warmth explain" if warmths[0] or warmths[-1] else "the meter explains"
    return (
        f"It has gone {way} by {_say(abs(change), unit)} from {first.date[:10]} to "
        f"{last.date[:10]}; {explains} no more than {_say(doubt, unit)}."
    )


def _say(amount: float, unit: Unit) -> str:
    number = Decimal(repr(amount))
    return amount_text(round(number, PLACES - 1 - number.adjusted()), unit)
