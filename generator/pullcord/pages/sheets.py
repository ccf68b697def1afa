"""The flowchart on the paper a browser prints: cut between its rows, never through a symbol.

Sizes are what A4 (210 x 297 mm, ISO 216) and Letter (216 x 279 mm) have in common inside the
margins that the print stylesheet sets, less the heading and the line below the chart.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from pullcord.drawing import Geometry
from pullcord.drawing.geometry import edge_id, node_id

MM_PER_PX = 25.4 / 96
"""CSS: 96 px are one inch."""
POINTS_PER_PX = 72 / 96
LEAST_TYPE_POINTS = 7.0
CLEARANCE_PX = 4.0
"""Left free between a cut and a symbol, for the width of its line."""


@dataclass(frozen=True)
class Paper:
    """The room one sheet gives to a piece of a chart."""

    name: str
    width_mm: float
    height_mm: float


UPRIGHT = Paper("upright", 174, 222)
LYING = Paper("lying", 243, 150)


@dataclass(frozen=True)
class SheetView:
    """One piece of the chart, shown through a window."""

    view_box: str
    width: str
    height: str
    caption: str
    parts: tuple[str, ...]
    """Ids of the arrows and boxes that show in it. A window on the whole chart would make the
    browser keep a copy of the whole chart for every sheet."""


@dataclass(frozen=True)
class SheetsView:
    """All pieces of a chart."""

    paper: str
    sheets: tuple[SheetView, ...]


def sheets_view(geometry: Geometry, words: Mapping[str, str]) -> SheetsView:
    """Return the chart cut to sheets, on the paper that needs the fewest at a readable size."""
    paper = min((UPRIGHT, LYING), key=lambda paper: _cost(geometry, paper))
    scale = _mm_per_px(geometry, paper)
    pieces = list(pairwise(cuts(geometry, paper.height_mm / scale)))
    return SheetsView(
        paper=paper.name,
        sheets=tuple(
            SheetView(
                view_box=f"0 {top:g} {geometry.width:g} {bottom - top:g}",
                width=f"{geometry.width * scale:.1f}mm",
                height=f"{(bottom - top) * scale:.1f}mm",
                caption=words["sheet"].format(title=geometry.title, place=place, all=len(pieces)),
                parts=tuple(_parts(geometry, top, bottom)),
            )
            for place, (top, bottom) in enumerate(pieces, 1)
        ),
    )


def cuts(geometry: Geometry, most_px: float) -> tuple[float, ...]:
    """Return where the chart is cut, from 0 to its height, no piece higher than `most_px`.

    Each piece is as high as it can be without cutting a symbol or an answer, which needs the fewest
    pieces; something higher than a whole piece has to be cut.
    """
    taken = sorted(span for span in _taken(geometry) if span[1] - span[0] <= most_px)
    found = [0.0]
    while geometry.height - found[-1] > most_px:
        found.append(_last_free(taken, found[-1], found[-1] + most_px))
    return (*found, geometry.height)


def type_points(geometry: Geometry, paper: Paper) -> float:
    """Return the size of the chart's smallest type on a paper."""
    lines = [line.size for node in geometry.nodes for line in node.shape.lines]
    scale = _mm_per_px(geometry, paper) / MM_PER_PX
    return min(lines) * scale * POINTS_PER_PX


def _cost(geometry: Geometry, paper: Paper) -> tuple[float, int]:
    short_of = max(0.0, LEAST_TYPE_POINTS - type_points(geometry, paper))
    return short_of, len(cuts(geometry, paper.height_mm / _mm_per_px(geometry, paper)))


def _mm_per_px(geometry: Geometry, paper: Paper) -> float:
    return min(MM_PER_PX, paper.width_mm / geometry.width)


def _taken(geometry: Geometry) -> Iterator[tuple[float, float]]:
    boxes = [(node.shape.y, node.shape.height) for node in geometry.nodes]
    boxes += [(edge.label.y, edge.label.height) for edge in geometry.edges if edge.label]
    for y, height in boxes:
        half = height / 2 + CLEARANCE_PX
        yield y - half, y + half


def _parts(geometry: Geometry, top: float, bottom: float) -> Iterator[str]:
    """Yield what shows between two heights, arrows first, for boxes stand before them."""
    for place, edge in enumerate(geometry.edges):
        heights = [y for _, y in (*edge.curve, *edge.arrow)]
        if edge.label:
            heights += [edge.label.y - edge.label.height, edge.label.y + edge.label.height]
        if min(heights) < bottom and max(heights) > top:
            yield edge_id(geometry, place)
    for place, node in enumerate(geometry.nodes):
        if abs(node.shape.y - (top + bottom) / 2) < (bottom - top + node.shape.height) / 2:
            yield node_id(geometry, place)


def _last_free(taken: list[tuple[float, float]], top: float, limit: float) -> float:
    at = limit
    for above, below in reversed(taken):
        if above < at < below:
            at = above
    return at if at > top else limit
