"""Every reading of one value over time, against what a good one reads. Plain geometry.

Black lines do all the telling, so that it can be read in black and white and by every eye: what is
good is a hatched band between heavy lines, a reading's mark has a shape of its own for each
verdict, and a bar through it shows what the meter leaves in doubt. Over-range has a row of its own
above the scale.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from pullcord.analysis.job.report import Point, Series
from pullcord.drawing.plot import (
    LINE_PX,
    TYPE_PX,
    Plot,
    Rect,
    Stroke,
    Written,
    hatch,
    width_of,
    write,
)
from pullcord.drawing.plot_scale import Scale, day_places, days_with_room, round_ticks, scale_for
from pullcord.drawing.reading_key import KeyWords, key_items, reading_key
from pullcord.drawing.reading_marks import HIDDEN_PX, bar, mark_for
from pullcord.readings.interval import OPEN

WIDTH_PX = 640.0
PLOT_PX = 190.0
"""Height of the scale."""
LANE_PX = 30.0
"""Height of the row for over-range."""
GAP_PX = 10.0
HATCH_PX = 13.0
INSET_PX = 22.0
"""From the ends of the day axis to the first and the last reading."""
ABSOLUTE_ZERO = -273.15
FLOORS = {"temperature": ABSOLUTE_ZERO}


@dataclass(frozen=True)
class ReadingWords:
    """What is written on the drawing, and said in its stead."""

    title: str
    summary: str
    over_range: str
    """Names the row above the scale: `OL`."""
    key: KeyWords


@dataclass(frozen=True)
class _Field:
    """Where everything stands."""

    series: Series
    scale: Scale
    lane: Rect | None
    """The row for over-range, where a reading stands in it, or a good one would."""
    left: float
    right: float
    bottom: float
    places: tuple[float, ...]

    def height_of(self, point: Point) -> float:
        """Return where a reading stands."""
        if point.amount is None:
            return self.lane.y + self.lane.height / 2 if self.lane else self.scale.top
        return self.scale.at(point.amount)


def plot_readings(series: Series, words: ReadingWords, id_: str) -> Plot:
    """Return the drawing of a series, which may be empty."""
    field = _field(series, words)
    bars = tuple(_bars(field))
    top = field.bottom + LINE_PX + 2 * GAP_PX
    key = reading_key(key_items(series, words.key, bool(bars)), top, WIDTH_PX)
    rects = (*_bands(field), *key.rects)
    placed = list(zip(series.points, field.places, strict=True))
    return Plot(
        id=id_,
        title=words.title,
        summary=words.summary,
        width=WIDTH_PX,
        height=top + key.height,
        rects=rects,
        strokes=(*_hatching(rects), *_frame(field), *_edges(field), *_trail(field),
                 *bars, *key.strokes),
        marks=(*(mark_for(point.verdict, x, field.height_of(point)) for point, x in placed),
               *key.marks),
        texts=(*_texts(field, words), *key.texts),
    )  # fmt: skip


def limit_edges(series: Series) -> tuple[float | None, float | None]:
    """Return the lower and the upper limit; None where there is none, as below `under 1 ohm`."""
    if series.limits is None:
        return None, None
    start, end = series.limits.start.value, series.limits.end.value
    floor = FLOORS.get(series.unit.quantity, 0.0)
    low = float(start) if start.is_finite() and float(start) > floor else None
    return low, float(end) if end.is_finite() else None


def _field(series: Series, words: ReadingWords) -> _Field:
    top = LINE_PX + GAP_PX
    lane_top = top
    has_lane = any(point.amount is None for point in series.points)
    has_lane = has_lane or (series.limits is not None and series.limits.is_only_open)
    if has_lane:
        top += LANE_PX
    scale = scale_for(
        list(_shown(series)), FLOORS.get(series.unit.quantity, 0.0), top + PLOT_PX, top
    )
    labels = [tick_text(tick, scale) for tick in round_ticks(scale)]
    labels += [words.over_range] if has_lane else []
    left = max((width_of(label) for label in labels), default=0.0) + 2 * GAP_PX
    right = WIDTH_PX - 1
    lane = Rect("lane", left, lane_top, right - left, LANE_PX) if has_lane else None
    days = [point.date for point in series.points]
    places = day_places(days, left + INSET_PX, right - INSET_PX)
    return _Field(series, scale, lane, left, right, top + PLOT_PX, places)


def _shown(series: Series) -> Iterator[float]:
    for point in series.points:
        if point.amount is not None:
            yield point.amount - point.half_width
            yield point.amount + point.half_width
    yield from (edge for edge in limit_edges(series) if edge is not None)


def tick_text(tick: float, scale: Scale) -> str:
    """Return a round figure of a scale with just enough decimals."""
    ticks = round_ticks(scale)
    step = ticks[1] - ticks[0] if len(ticks) > 1 else abs(tick) or 1.0
    places = max(0, -math.floor(math.log10(step) + 1e-9))
    return f"{round(Decimal(repr(tick)), places):f}".replace("-", "\N{MINUS SIGN}")


def _bands(field: _Field) -> Iterator[Rect]:
    limits, scale = field.series.limits, field.scale
    if limits is None or limits.is_empty:
        return
    across = field.right - field.left
    if field.lane and OPEN in limits:
        yield Rect("band", field.left, field.lane.y, across, field.lane.height)
    if not limits.is_only_open:
        low, high = limit_edges(field.series)
        top = scale.top if high is None else scale.at(high)
        bottom = scale.bottom if low is None else scale.at(low)
        yield Rect("band", field.left, top, across, bottom - top)


def _hatching(rects: Iterable[Rect]) -> Iterator[Stroke]:
    for rect in rects:
        yield from hatch(rect, HATCH_PX) if rect.role == "band" else ()


def _edges(field: _Field) -> Iterator[Stroke]:
    for edge in limit_edges(field.series):
        if edge is not None:
            y = field.scale.at(edge)
            yield Stroke("limit", field.left, y, field.right, y)


def _frame(field: _Field) -> Iterator[Stroke]:
    top = field.lane.y if field.lane else field.scale.top
    yield Stroke("axis", field.left, top, field.left, field.bottom)
    yield Stroke("axis", field.left, field.bottom, field.right, field.bottom)
    if field.lane:
        y = field.lane.y + field.lane.height
        yield Stroke("split", field.left, y, field.right, y)
    for tick in round_ticks(field.scale):
        y = field.scale.at(tick)
        yield Stroke("axis", field.left - 5, y, field.left, y)
    for number in _named_days(field):
        x = field.places[number]
        yield Stroke("axis", x, field.bottom, x, field.bottom + 5)


def _trail(field: _Field) -> Iterator[Stroke]:
    """Yield lines from reading to reading, so that a drift is seen; over-range breaks them."""
    pairs = list(zip(field.series.points, field.places, strict=True))
    for (one, x1), (two, x2) in pairwise(pairs):
        if one.amount is not None and two.amount is not None:
            yield Stroke("trail", x1, field.height_of(one), x2, field.height_of(two))


def _bars(field: _Field) -> Iterator[Stroke]:
    for point, x in zip(field.series.points, field.places, strict=True):
        if point.amount is not None:
            low = field.scale.at(point.amount - point.half_width)
            high = field.scale.at(point.amount + point.half_width)
            if low - high > 2 * HIDDEN_PX:
                yield from bar(x, low, high)


def _named_days(field: _Field) -> tuple[int, ...]:
    days = [point.date for point in field.series.points]
    return days_with_room(field.places, days, width_of("0000-00-00"), GAP_PX)


def _texts(field: _Field, words: ReadingWords) -> Iterator[Written]:
    drop = TYPE_PX * 0.35
    yield write(field.series.unit.symbol, 0, TYPE_PX, weight="bold", role="unit")
    for tick in round_ticks(field.scale):
        label = tick_text(tick, field.scale)
        yield write(label, field.left - GAP_PX, field.scale.at(tick) + drop, at=1.0)
    if field.lane:
        y = field.lane.y + field.lane.height / 2 + drop
        yield write(words.over_range, field.left - GAP_PX, y, at=1.0, weight="bold")
    for number in _named_days(field):
        yield _day(field, number)


def _day(field: _Field, number: int) -> Written:
    day = field.series.points[number].date[:10]
    x, half = field.places[number], width_of(day) / 2
    x = min(max(x, half), WIDTH_PX - half)
    return write(day, x, field.bottom + LINE_PX, at=0.5)
