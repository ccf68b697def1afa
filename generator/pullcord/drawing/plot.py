"""What a small drawing to scale is made of: plain geometry, in px, from the top left.

Whoever draws it, on the screen or on paper, gives each role its looks; what a role means never
hangs on its colour.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from pullcord.drawing.font import Weight
from pullcord.drawing.measure import text_width_px

TYPE_PX = 16.0
"""Size of all type: what is read at arm's length on a tablet."""
LINE_PX = 21.0
"""From one baseline to the next."""


@dataclass(frozen=True)
class Rect:
    """A rectangle."""

    role: str
    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True)
class Stroke:
    """A straight line."""

    role: str
    x1: float
    y1: float
    x2: float
    y2: float


@dataclass(frozen=True)
class Mark:
    """A small closed shape, filled or outlined by its role."""

    role: str
    points: tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Written:
    """One line of text; `y` is its baseline."""

    role: str
    text: str
    x: float
    y: float
    width: float
    size: float
    weight: Weight


@dataclass(frozen=True)
class Plot:
    """A whole drawing; what stands later in a list lies above what stands before it."""

    id: str
    title: str
    summary: str
    """What it shows, in words, for whoever does not see it."""
    width: float
    height: float
    rects: tuple[Rect, ...]
    strokes: tuple[Stroke, ...]
    marks: tuple[Mark, ...]
    texts: tuple[Written, ...]


def write(
    text: str, x: float, y: float, *, at: float = 0.0, weight: Weight = "regular", role: str = ""
) -> Written:
    """Return a line of text whose point `at` (0 its left end, 1 its right) stands at `x`."""
    width = text_width_px(text, TYPE_PX, weight)
    return Written(role or "text", text, x - at * width, y, width, TYPE_PX, weight)


def width_of(text: str, weight: Weight = "regular") -> float:
    """Return the width of a line of text, in px."""
    return text_width_px(text, TYPE_PX, weight)


def hatch(area: Rect, every: float) -> Iterator[Stroke]:
    """Yield lines that rise to the right across an area, `every` px apart along its bottom."""
    right, bottom = area.x + area.width, area.y + area.height
    start = area.x - area.height + every
    while start < right:
        left = max(start, area.x)
        end = min(start + area.height, right)
        yield Stroke("hatch", left, bottom - (left - start), end, bottom - (end - start))
        start += every


def wrapped(groups: Iterable[float], room: float, gap: float) -> list[tuple[float, int]]:
    """Return where things of the given widths stand, as x and row, each row no wider than `room`.

    A thing that is wider than a row has one to itself.
    """
    places: list[tuple[float, int]] = []
    x, row = 0.0, 0
    for width in groups:
        if x and x + width > room:
            x, row = 0.0, row + 1
        places.append((x, row))
        x += width + gap
    return places
