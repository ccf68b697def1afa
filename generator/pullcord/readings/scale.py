"""Every number a meter can display for one quantity, in order, and what each of them proves.

Displays are counted from 0 (the least) to `over` (over-range, after the largest number).
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal

from pullcord.readings.interval import OPEN, Cut
from pullcord.readings.meter import Range


@dataclass(frozen=True)
class Stretch:
    """The displays one range adds to those of the smaller ranges."""

    range: Range
    begin: int
    """Display number of its first."""
    first: int
    """Its first display, in steps of the range."""
    length: int
    """How many it adds."""

    def value(self, place: int) -> Decimal:
        """Return what its display number `place`, counted within the stretch, shows."""
        return (self.first + place) * self.range.step


@dataclass(frozen=True)
class Scale:
    """All displays of a quantity."""

    stretches: tuple[Stretch, ...]

    @property
    def over(self) -> int:
        """Return the display number of over-range."""
        return self.stretches[-1].begin + self.stretches[-1].length

    def shown(self, display: int) -> Decimal:
        """Return what a display shows, in base units; infinity for over-range."""
        if display >= self.over:
            return OPEN
        stretch = self.stretch_of(display)
        return stretch.value(display - stretch.begin)

    def stretch_of(self, display: int) -> Stretch:
        """Return the stretch a display lies in; over-range counts to the last."""
        return next(one for one in reversed(self.stretches) if one.begin <= display)

    def last_below(self, cut: Cut) -> int:
        """Return the largest display that proves the true value to lie below a cut; -1 for none."""
        if cut.value == OPEN:
            return self.over - 1
        limit = float(cut.value)

        def reaches(display: int) -> bool:
            stretch = self.stretch_of(display)
            shown = float(stretch.value(display - stretch.begin))
            highest = shown + stretch.range.guard(shown)
            return not (highest < limit or (cut.after and highest == limit))

        return bisect_left(range(self.over), True, key=reaches) - 1

    def first_above(self, cut: Cut) -> int:
        """Return the display from which on all prove the true value to lie above a cut.

        That is `over` when only over-range proves it, and `over + 1` when nothing does.
        """
        if cut.value == OPEN:
            return self.over
        top = self.stretches[-1].range
        if not _is_above(float(top.full), top, cut):
            return self.over + 1
        display = self.over
        for stretch in reversed(self.stretches):
            place = _first_place_above(stretch, cut)
            display = stretch.begin + place
            if place > 0:
                break
        return display


def scale_of(ranges: Sequence[Range]) -> Scale | None:
    """Return the scale of ranges of one quantity, smallest first; None when there are none."""
    stretches: list[Stretch] = []
    begin, reached = 0, Decimal(0)
    for one in ranges:
        first = int((reached / one.step).to_integral_value(ROUND_CEILING))
        length = int(one.full / one.step) - first
        if length > 0:
            stretches.append(Stretch(one, begin, first, length))
            begin, reached = begin + length, one.full
    return Scale(tuple(stretches)) if stretches else None


def _first_place_above(stretch: Stretch, cut: Cut) -> int:
    def proves(place: int) -> bool:
        return _is_above(float(stretch.value(place)), stretch.range, cut)

    return 0 if proves(0) else bisect_left(range(stretch.length), True, key=proves)


def _is_above(shown: float, one: Range, cut: Cut) -> bool:
    lowest, limit = shown - one.guard(shown), float(cut.value)
    return lowest > limit or (not cut.after and lowest == limit)
