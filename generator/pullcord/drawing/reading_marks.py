"""The marks of readings: a shape for each verdict, and a bar for what the meter leaves in doubt."""

from __future__ import annotations

import math
from collections.abc import Iterator

from pullcord.drawing.plot import Mark, Stroke

MARK_PX = 7.0
"""Half a mark's width."""
CAP_PX = 6.0
"""Half the width of a bar's ends."""
HIDDEN_PX = 11.0
"""A bar that reaches no further from its mark is not drawn: it would only blur the mark."""
CORNERS = 24


def bar(x: float, y1: float, y2: float) -> Iterator[Stroke]:
    """Yield an upright bar with caps from `y1` to `y2`."""
    yield Stroke("bar", x, y1, x, y2)
    for y in (y1, y2):
        yield Stroke("bar", x - CAP_PX, y, x + CAP_PX, y)


def mark_for(verdict: str, x: float, y: float) -> Mark:
    """Return the mark of a verdict: a disc, a cross, an open diamond, an open ring."""
    size = MARK_PX
    match verdict:
        case "within":
            return Mark("within", _around(x, y, size))
        case "outside":
            return Mark("outside", _cross(x, y, size + 3, 2.2))
        case "too close":
            reach = size + 2
            return Mark("close", ((x, y - reach), (x + reach, y), (x, y + reach), (x - reach, y)))
        case _:
            return Mark("open", _around(x, y, size))


def _around(x: float, y: float, radius: float) -> tuple[tuple[float, float], ...]:
    turns = [2 * math.pi * number / CORNERS for number in range(CORNERS)]
    return tuple((x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns)


def _cross(x: float, y: float, reach: float, half: float) -> tuple[tuple[float, float], ...]:
    """Return an upright cross turned by 45 degrees, as one closed outline."""
    a, b = reach, half
    upright = [
        (-b, -a), (b, -a), (b, -b), (a, -b), (a, b), (b, b),
        (b, a), (-b, a), (-b, b), (-a, b), (-a, -b), (-b, -b),
    ]  # fmt: skip
    turn = math.sqrt(0.5)
    return tuple((x + (dx - dy) * turn, y + (dx + dy) * turn) for dx, dy in upright)
