"""The key of a drawing of readings: what is on it, and nothing else."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pullcord.analysis.job.report import Series
from pullcord.drawing.plot import (
    LINE_PX,
    TYPE_PX,
    Mark,
    Rect,
    Stroke,
    Written,
    width_of,
    wrapped,
    write,
)
from pullcord.drawing.reading_marks import bar, mark_for

SIGN_PX = 30.0
"""What a sign takes, with the gap to its words."""
BESIDE_PX = 20.0
ROW_PX = LINE_PX + 5


@dataclass(frozen=True)
class KeyWords:
    """What the key says."""

    limits: str
    """Names the band."""
    doubt: str
    """Names the bars."""
    verdicts: dict[str, str]
    """Names each verdict."""


@dataclass(frozen=True)
class Key:
    """A key where it stands."""

    rects: tuple[Rect, ...]
    strokes: tuple[Stroke, ...]
    marks: tuple[Mark, ...]
    texts: tuple[Written, ...]
    height: float


def key_items(series: Series, words: KeyWords, has_bars: bool) -> list[tuple[str, str]]:
    """Return what the key explains, as kind and words: only what is on the drawing."""
    items = [("band", words.limits)] if series.limits is not None else []
    met = {point.verdict for point in series.points}
    items += [(verdict, said) for verdict, said in words.verdicts.items() if verdict in met]
    return [*items, ("bar", words.doubt)] if has_bars else items


def reading_key(items: Sequence[tuple[str, str]], top: float, room: float) -> Key:
    """Return the key, as many rows as its words need, from `top` down."""
    places = wrapped([SIGN_PX + width_of(said) for _, said in items], room, BESIDE_PX)
    rects: list[Rect] = []
    strokes: list[Stroke] = []
    marks: list[Mark] = []
    texts: list[Written] = []
    for (kind, said), (x, row) in zip(items, places, strict=True):
        y = top + row * ROW_PX + TYPE_PX / 2
        texts.append(write(said, x + SIGN_PX, y + TYPE_PX * 0.35))
        if kind == "band":
            rects.append(Rect("band", x, y - 8, 22, 16))
            strokes += [Stroke("limit", x, y + side, x + 22, y + side) for side in (-8, 8)]
        elif kind == "bar":
            strokes += bar(x + 11, y - 9, y + 9)
        else:
            marks.append(mark_for(kind, x + 11, y))
    rows = 1 + max((row for _, row in places), default=-1)
    return Key(tuple(rects), tuple(strokes), tuple(marks), tuple(texts), rows * ROW_PX)
