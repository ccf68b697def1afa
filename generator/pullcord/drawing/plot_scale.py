"""Scales of a small drawing: round figures along the side, days along the bottom."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

STEPS = (1.0, 2.0, 5.0, 10.0)
MOST_TICKS = 5
AIR = 0.08
"""Of the range, left free above and below what is shown."""
BETWEEN_PX = 15.0
"""Two readings of one evening stand this far apart, so that both are seen."""


@dataclass(frozen=True)
class Scale:
    """Figures from `low` to `high`, drawn from `bottom` up to `top`."""

    low: float
    high: float
    bottom: float
    top: float

    def at(self, value: float) -> float:
        """Return where a figure stands; one outside the scale stands at its end."""
        share = (value - self.low) / (self.high - self.low)
        return self.bottom + (self.top - self.bottom) * min(max(share, 0.0), 1.0)


def scale_for(values: Sequence[float], floor: float, bottom: float, top: float) -> Scale:
    """Return a scale that shows all values and no figure below `floor`."""
    low, high = (min(values), max(values)) if values else (0.0, 1.0)
    air = (high - low) * AIR or abs(high) * AIR or 1.0
    least = low - air if low - air > floor else floor
    return Scale(least, high + air, bottom, top)


def round_ticks(scale: Scale) -> tuple[float, ...]:
    """Return the round figures of a scale, at most five of them, one, two or five steps apart."""
    rough = (scale.high - scale.low) / MOST_TICKS
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(power * each for each in STEPS if power * each >= rough * (1 - 1e-9))
    first = math.ceil(scale.low / step - 1e-9)
    last = math.floor(scale.high / step + 1e-9)
    return tuple(step * number for number in range(first, last + 1))


def day_number(day: str) -> int:
    """Return how many days a day such as `2026-03-01` is after the first of the calendar."""
    return date.fromisoformat(day[:10]).toordinal()


def day_places(days: Sequence[str], left: float, right: float) -> tuple[float, ...]:
    """Return where each of the days, in rising order, stands: to scale, yet none upon another."""
    if not days:
        return ()
    numbers = [day_number(day) for day in days]
    first, last = min(numbers), max(numbers)
    apart = min(BETWEEN_PX, (right - left) / max(1, len(days) - 1))
    if first == last:
        start = (left + right - apart * (len(days) - 1)) / 2
        return tuple(start + apart * number for number in range(len(days)))
    scale = (right - left) / (last - first)
    wanted = [left + (number - first) * scale for number in numbers]
    return tuple(_pushed_back(list(_pushed_on(wanted, apart)), apart, right))


def _pushed_on(places: Sequence[float], apart: float) -> Iterator[float]:
    before = -math.inf
    for place in places:
        before = max(place, before + apart)
        yield before


def _pushed_back(places: list[float], apart: float, right: float) -> list[float]:
    after = right + apart
    for number in range(len(places) - 1, -1, -1):
        after = places[number] = min(places[number], after - apart)
    return places


def days_with_room(
    places: Sequence[float], days: Sequence[str], width: float, gap: float
) -> tuple[int, ...]:
    """Return which days are named below: the last and the first, then whichever fit between.

    Days of one evening are named once. `width` is that of a written day.
    """
    once = {day[:10]: number for number, day in reversed(list(enumerate(days)))}
    order = sorted(once.values())
    named: list[int] = []
    for number in dict.fromkeys((*order[-1:], *order)):
        if all(abs(places[number] - places[other]) >= width + gap for other in named):
            named.append(number)
    return tuple(sorted(named))
