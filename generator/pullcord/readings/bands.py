"""What a display proves: each answer's own band, and what is too close to call with this meter.

Guard bands as in JCGM 106:2012, clause 8: a reading is judged only when it keeps one guard (a
one-sided 95 % of its own uncertainty) from the limit. Without an instrument for the quantity,
readings are taken at face value.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal
from functools import lru_cache

from pullcord.readings.amount import amount_text, number_text
from pullcord.readings.answers import Share
from pullcord.readings.interval import OPEN, OPEN_WORDS, Cut, Interval, closed
from pullcord.readings.limits import Limits
from pullcord.readings.meter import Meter, Range
from pullcord.readings.scale import Scale, scale_of
from pullcord.readings.unit import Unit

ZERO = Decimal(0)
MOST_KEPT = 2048
"""The same limits come back in many procedures; so many sets of bands are kept at hand."""


@dataclass(frozen=True)
class Band:
    """A stretch of readings and what they say."""

    answers: tuple[str, ...]
    """The one answer it proves, or the several that it leaves possible."""
    low: Decimal
    """The least number shown in it, in base units."""
    high: Decimal
    """The greatest, in base units; infinity when over-range belongs to it."""
    interval: Interval
    """Every number that falls in it, also those the display cannot show."""
    words: str
    """The readings in words: `204 to 296 ohm`."""

    @property
    def is_close(self) -> bool:
        """Say whether it is too close to call."""
        return len(self.answers) > 1


@dataclass(frozen=True)
class Untold:
    """An answer that this meter can never prove."""

    answer: str
    readings: str
    """The true values it stands for, in words."""
    why: str
    """What the meter does there, in words with numbers."""


def bands_of(shares: Sequence[Share], meter: Meter, unit: Unit) -> tuple[Band, ...]:
    """Return the bands of a complete set of shares, lowest first, in words of `unit`.

    The shares must cover everything once (`check_cover`); empty ones are passed over.
    """
    real = tuple(share for share in shares if not share.interval.is_empty)
    return _bands(real, meter.ranges_for(unit.quantity), unit)


@lru_cache(maxsize=MOST_KEPT)
def _bands(real: tuple[Share, ...], ranges: tuple[Range, ...], unit: Unit) -> tuple[Band, ...]:
    scale = scale_of(ranges)
    if scale is None:
        return tuple(_at_face_value(share, unit) for share in real)
    proven = list(_proven(real, scale))
    spans = _filled(proven, real, scale.over)
    return tuple(_band(first, last, names, scale, unit) for first, last, names in spans)


def untold(
    shares: Sequence[Share], bands: Sequence[Band], meter: Meter, unit: Unit
) -> Iterator[Untold]:
    """Yield every answer that no band proves."""
    told = {band.answers[0] for band in bands if not band.is_close}
    for share in shares:
        if share.answer not in told and not share.interval.is_empty:
            readings = Limits(unit.quantity, share.interval, unit).words
            yield Untold(share.answer, readings, _why(share, meter, unit))


def judge(bands: Sequence[Band], shown: Decimal) -> Band:
    """Return the band a shown number (base units, infinity for over-range) falls in."""
    return next((band for band in bands if shown in band.interval), bands[-1])


def _proven(shares: Sequence[Share], scale: Scale) -> Iterator[tuple[int, int, int]]:
    """Yield first display, last display and position of each share that can be proven."""
    for position, share in enumerate(shares):
        first = 0 if position == 0 else scale.first_above(share.interval.start)
        is_last = position == len(shares) - 1
        last = scale.over if is_last else scale.last_below(share.interval.end)
        if first <= last:
            yield first, last, position


def _filled(
    proven: Sequence[tuple[int, int, int]], shares: Sequence[Share], over: int
) -> Iterator[tuple[int, int, tuple[str, ...]]]:
    """Yield first display, last display and answers of every band, the close ones between too."""
    names = [share.answer for share in shares]
    reached, before = 0, 0
    for first, last, position in proven:
        if first > reached:
            yield reached, first - 1, tuple(names[before : position + 1])
        yield first, last, (names[position],)
        reached, before = last + 1, position
    if reached <= over:
        yield reached, over, tuple(names[before:])


def _band(first: int, last: int, answers: tuple[str, ...], scale: Scale, unit: Unit) -> Band:
    low, high = scale.shown(first), scale.shown(last)

    def number(display: int) -> str:
        step = scale.stretch_of(display).range.step / unit.factor
        return number_text(unit.from_base(scale.shown(display)), _places(step))

    words = _display_words((first, last), scale.over, number, unit.name)
    return Band(answers, low, high, _between(first, last, len(answers) > 1, scale), words)


def _between(first: int, last: int, is_close: bool, scale: Scale) -> Interval:
    """Return the numbers of a band; what lies between two displays goes to the doubtful one.

    Between two proven bands, where only over-range can follow, it goes to the lower one.
    """
    if is_close:
        below = Cut(scale.shown(first - 1), 1) if first else Cut(ZERO, 0)
        above = Cut(scale.shown(last + 1), 0) if last < scale.over else Cut(OPEN, 1)
        return Interval(below, above)
    if last == scale.over - 1:
        return Interval(Cut(scale.shown(first), 0), Cut(OPEN, 0))
    return closed(scale.shown(first), scale.shown(last))


def _display_words(
    ends: tuple[int, int], over: int, number: Callable[[int], str], unit: str
) -> str:
    first, last = ends
    if first == over:
        return OPEN_WORDS
    if last >= over - 1:
        some = "any number" if first == 0 else f"{number(first)} {unit} or more"
        return some if last == over else f"{some}, but not open"
    if first == last:
        return f"{number(first)} {unit}"
    if first == 0:
        return f"{number(last)} {unit} or less"
    return f"{number(first)} to {number(last)} {unit}"


def _places(step: Decimal) -> int:
    exponent = step.normalize().as_tuple().exponent
    return max(0, -exponent) if isinstance(exponent, int) else 0


def _at_face_value(share: Share, unit: Unit) -> Band:
    interval = share.interval
    words = Limits(unit.quantity, interval, unit).words
    return Band((share.answer,), interval.start.value, interval.end.value, interval, words)


def _why(share: Share, meter: Meter, unit: Unit) -> str:
    edges = [cut.value for cut in (share.interval.start, share.interval.end)]
    near = max((edge for edge in edges if edge.is_finite()), default=ZERO)
    ranges = meter.ranges_for(unit.quantity)
    if near >= ranges[-1].full:
        return f"its ranges end at {ranges[-1].dial}"
    return (
        f"near {amount_text(unit.from_base(near), unit)} it may be off by "
        f"{guard_words(range_for(ranges, near), near, unit)}"
    )


def range_for(ranges: Sequence[Range], value: Decimal) -> Range:
    """Return the smallest range that still shows a value with its guard, else the largest."""
    fitting = (one for one in ranges if float(value) + one.guard(float(value)) < float(one.full))
    return next(fitting, ranges[-1])


def guard_words(one: Range, near: Decimal, unit: Unit) -> str:
    """Return how far a reading near a value must keep from a limit, rounded up."""
    guard = Decimal(repr(one.guard(float(near)))) / unit.factor
    places = _places(one.step / unit.factor) + 1
    up = guard.quantize(Decimal(1).scaleb(-places), ROUND_CEILING)
    return amount_text(up, unit)
