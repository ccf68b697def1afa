"""Stretches of what an instrument can show, from nothing to over-range.

A cut lies just below (`after` 0) or just above (`after` 1) a value; an interval runs from one cut
to the next. So closed, half-open and one-sided limits are all the same thing, and two intervals
meet when the end of one IS the start of the other. Over-range (open circuit) is the value infinity.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from typing import NamedTuple

from pullcord.model.quantity import Quantity

OPEN = Decimal("Infinity")
"""What over-range is worth: more than any number."""

ABSOLUTE_ZERO = Decimal("-273.15")

OPEN_WORDS = "open (over-range)"


class Cut(NamedTuple):
    """A place between two values; cuts are ordered."""

    value: Decimal
    """In base units."""
    after: int
    """0: the value lies above the cut; 1: below it."""


@dataclass(frozen=True)
class Interval:
    """Everything between two cuts, in base units. Empty when they do not run upward."""

    start: Cut
    end: Cut

    def __contains__(self, value: Decimal) -> bool:
        """Say whether a value lies inside."""
        return self.start <= Cut(value, 0) and Cut(value, 1) <= self.end

    @property
    def is_empty(self) -> bool:
        """Say whether nothing lies inside."""
        return self.start >= self.end

    @property
    def is_only_open(self) -> bool:
        """Say whether only over-range lies inside."""
        return self.start == Cut(OPEN, 0) and not self.is_empty

    @property
    def is_point(self) -> bool:
        """Say whether one single value lies inside."""
        return self.start.value == self.end.value and not self.is_empty

    def overlap(self, other: Interval) -> Interval:
        """Return what both hold; it may be empty."""
        return Interval(max(self.start, other.start), min(self.end, other.end))


def closed(low: Decimal, high: Decimal) -> Interval:
    """Return the interval that holds both of its ends."""
    return Interval(Cut(low, 0), Cut(high, 1))


ONLY_OPEN = closed(OPEN, OPEN)


def whole(quantity: Quantity) -> Interval:
    """Return all that an instrument for this quantity can show, over-range included."""
    return closed(ABSOLUTE_ZERO if quantity == "temperature" else Decimal(0), OPEN)


def interval_words(interval: Interval, floor: Decimal, word: Callable[[Decimal], str]) -> str:
    """Return an interval in words; `word` prints a number, `floor` is the least there can be."""
    start, end = interval.start, interval.end
    if interval.is_only_open:
        return OPEN_WORDS
    if end.value == OPEN:
        low = f"over {word(start.value)}" if start.after else f"{word(start.value)} or more"
        return low if end.after else f"{low}, but not open"
    high = word(end.value) if end.after else f"under {word(end.value)}"
    if start == Cut(floor, 0):
        return f"up to {high}" if end.after else high
    return f"{'over ' if start.after else ''}{word(start.value)} to {high}"
