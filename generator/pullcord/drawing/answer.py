"""Bring the answers of long arrows back to the check they leave.

The engine puts an answer half way along its arrow. Where an arrow passes many steps that is a
screen or two below the question. Here it goes to the first free place beside its arrow; when there
is none near the question, it stays where the engine made room for it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice

from pullcord.drawing.geometry import Geometry, Label, PlacedEdge, move_lines, outline, rounded
from pullcord.drawing.plane import (
    Box,
    Point,
    box_around,
    is_meeting,
    is_overlapping,
    points_along,
)

FAR_PX = 90
"""An answer whose middle is farther below the beginning of its arrow is looked after."""
REACH_PX = 330
"""How far along the arrow a place is looked for."""
_STEP_PX = 6
_SIDES = ((1, 0), (-1, 0), (1, -1), (-1, -1), (1, 1), (-1, 1))
"""Where an answer may stand about a point of its arrow: beside it, or touching with a corner."""


@dataclass(frozen=True)
class _Obstacles:
    outlines: tuple[tuple[Point, ...], ...]
    arrows: tuple[tuple[Box, tuple[Point, ...]], ...]
    page: Box


def bring_answers_near(geometry: Geometry) -> Geometry:
    """Return the geometry with the answers of long arrows moved, as far as there is room."""
    obstacles = _Obstacles(
        outlines=tuple(outline(node.shape) for node in geometry.nodes),
        arrows=tuple(_arrow(edge) for edge in geometry.edges),
        page=Box(0, 0, geometry.width, geometry.height),
    )
    edges = list(geometry.edges)
    for number, edge in enumerate(edges):
        if edge.label is not None and abs(edge.label.y - edge.curve[0][1]) > FAR_PX:
            taken = [box_of(e.label) for e in edges if e.label and e is not edge]
            places = _places(edge, edge.label)
            free = (label for label in places if _is_free(box_of(label), taken, obstacles))
            edges[number] = replace(edge, label=next(free, edge.label))
    return replace(geometry, edges=tuple(edges))


def box_of(label: Label) -> Box:
    """Return the box that a label fills."""
    return Box(
        label.x - label.width / 2,
        label.y - label.height / 2,
        label.x + label.width / 2,
        label.y + label.height / 2,
    )


def _places(edge: PlacedEdge, label: Label) -> Iterator[Label]:
    for x, y in islice(points_along(edge.curve, _STEP_PX), int(REACH_PX / _STEP_PX)):
        for aside, below in _SIDES:
            dx = x + aside * (label.width / 2 + 1) - label.x
            dy = y + below * (label.height / 2 + 1) - label.y
            lines = move_lines(label.lines, dx, dy)
            yield replace(label, x=rounded(label.x + dx), y=rounded(label.y + dy), lines=lines)


def _is_free(box: Box, taken: list[Box], obstacles: _Obstacles) -> bool:
    page = obstacles.page
    return (
        page.left <= box.left
        and box.right <= page.right
        and page.top <= box.top
        and box.bottom <= page.bottom
        and not any(is_overlapping(box, other) for other in taken)
        and not any(is_meeting(box, corners) for corners in obstacles.outlines)
        and not any(_is_crossed(box, *arrow) for arrow in obstacles.arrows)
    )


def _is_crossed(box: Box, bounds: Box, points: tuple[Point, ...]) -> bool:
    return is_overlapping(box, bounds) and any(
        box.left < x < box.right and box.top < y < box.bottom for x, y in points
    )


def _arrow(edge: PlacedEdge) -> tuple[Box, tuple[Point, ...]]:
    points = (*points_along(edge.curve, _STEP_PX), edge.arrow[0])
    bounds = box_around(points)
    # A quite straight arrow would have no width, and a box without width overlaps nothing.
    return Box(bounds.left - 1, bounds.top - 1, bounds.right + 1, bounds.bottom + 1), points
