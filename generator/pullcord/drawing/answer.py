"""Put the answers of long arrows beside the check they leave.

The engine puts an answer half way along its arrow. Where an arrow passes many steps that is a
screen or two below the question, and the room it keeps there makes the chart wider. So an answer
goes to the first free place along its arrow, from the question on.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice

from pullcord.drawing.arrange import Pair
from pullcord.drawing.geometry import (
    Geometry,
    Label,
    PlacedEdge,
    Shape,
    move_label,
    outline,
    rounded,
)
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
_PIECE = 40
"""Points in a piece of an arrow."""
_SIDES = ((1, 0), (1, -1), (-1, 0), (-1, -1), (1, 1), (-1, 1))
"""Where an answer may stand about a point of its arrow: beside it, or touching with a corner.

The first number is 1 on the side to which the arrow turns, the second 1 below.
"""

_Bounded = tuple[Box, tuple[Point, ...]]
"""Points with the box around them, so that most questions are answered by the box alone."""


@dataclass(frozen=True)
class _Obstacles:
    outlines: tuple[_Bounded, ...]
    arrows: tuple[_Bounded, ...]
    """Pieces of all arrows."""
    page: Box

    def near(self, box: Box) -> _Obstacles:
        """Return those that may touch something inside a box."""
        return _Obstacles(
            tuple(each for each in self.outlines if is_overlapping(box, each[0])),
            tuple(each for each in self.arrows if is_overlapping(box, each[0])),
            self.page,
        )


@dataclass(frozen=True)
class Settled:
    """A geometry whose answers stand well, but for those of some arrows."""

    geometry: Geometry
    homeless: frozenset[Pair]
    """Loose arrows whose answers found no free place; their labels stand anywhere."""


def settle_answers(geometry: Geometry, loose: frozenset[Pair]) -> Settled:
    """Find places for the answers of `loose` arrows and better ones for those that need them.

    Needed by an answer far from its question and by one that another arrow runs through; when
    there is no better place, it stays where the engine made room for it.
    """
    obstacles = _obstacles(geometry)
    edges = list(geometry.edges)
    homeless = {(edge.tail, edge.head) for edge in edges} & loose
    for number, edge in enumerate(edges):
        pair = edge.tail, edge.head
        if edge.label is None:
            homeless.discard(pair)
        elif pair in homeless or _is_ill_placed(edge, edge.label, obstacles):
            taken = [
                box_of(other.label)
                for other in edges
                if other.label and other is not edge and (other.tail, other.head) not in homeless
            ]
            found = _free_place(edge, edge.label, taken, obstacles)
            if found is not None:
                edges[number] = replace(edge, label=found)
                homeless.discard(pair)
    return Settled(replace(geometry, edges=tuple(edges)), frozenset(homeless))


def _is_ill_placed(edge: PlacedEdge, label: Label, obstacles: _Obstacles) -> bool:
    if abs(label.y - edge.curve[0][1]) > FAR_PX:
        return True
    own = set(_pieces(edge))
    box = box_of(label)
    return any(_is_crossed(box, *piece) for piece in obstacles.near(box).arrows if piece not in own)


def _free_place(
    edge: PlacedEdge, label: Label, taken: list[Box], obstacles: _Obstacles
) -> Label | None:
    shifts = list(_shifts(edge, label))
    moved = [_box_around(label, label.x + x, label.y + y) for x, y in shifts]
    reach = box_around(corner for place in moved for corner in place.corners)
    near = obstacles.near(reach)
    close = [box for box in taken if is_overlapping(box, reach)]
    free = (
        shift for shift, place in zip(shifts, moved, strict=True) if _is_free(place, close, near)
    )
    return next((move_label(label, *shift) for shift in free), None)


def _obstacles(geometry: Geometry) -> _Obstacles:
    return _Obstacles(
        outlines=tuple(_outline(node.shape) for node in geometry.nodes),
        arrows=tuple(piece for edge in geometry.edges for piece in _pieces(edge)),
        page=Box(0, 0, geometry.width, geometry.height),
    )


def box_of(label: Label) -> Box:
    """Return the box that a label fills."""
    return _box_around(label, label.x, label.y)


def _box_around(label: Label, x: float, y: float) -> Box:
    """Return the box the label fills when its middle is moved to a place."""
    x, y = rounded(x), rounded(y)
    return Box(x - label.width / 2, y - label.height / 2, x + label.width / 2, y + label.height / 2)


def _shifts(edge: PlacedEdge, label: Label) -> Iterator[Point]:
    """Yield how far the label is moved to each place that is tried."""
    turn = -1 if edge.arrow[0][0] < edge.curve[0][0] else 1
    for x, y in islice(points_along(edge.curve, _STEP_PX), int(REACH_PX / _STEP_PX)):
        for aside, below in _SIDES:
            dx = x + turn * aside * (label.width / 2 + 1) - label.x
            dy = y + below * (label.height / 2 + 1) - label.y
            yield dx, dy


def _is_free(box: Box, taken: list[Box], obstacles: _Obstacles) -> bool:
    page = obstacles.page
    return (
        page.left <= box.left
        and box.right <= page.right
        and page.top <= box.top
        and box.bottom <= page.bottom
        and not any(is_overlapping(box, other) for other in taken)
        and not any(_is_covered(box, *shape) for shape in obstacles.outlines)
        and not any(_is_crossed(box, *arrow) for arrow in obstacles.arrows)
    )


def _is_crossed(box: Box, bounds: Box, points: tuple[Point, ...]) -> bool:
    return is_overlapping(box, bounds) and any(
        box.left < x < box.right and box.top < y < box.bottom for x, y in points
    )


def _is_covered(box: Box, bounds: Box, corners: tuple[Point, ...]) -> bool:
    return is_overlapping(box, bounds) and is_meeting(box, corners)


def _outline(shape: Shape) -> _Bounded:
    corners = outline(shape)
    return box_around(corners), corners


def _pieces(edge: PlacedEdge) -> Iterator[_Bounded]:
    points = (*points_along(edge.curve, _STEP_PX), edge.arrow[0])
    for start in range(0, len(points), _PIECE):
        piece = points[start : start + _PIECE]
        bounds = box_around(piece)
        # A quite straight piece would have no width, and a box without width overlaps nothing.
        yield Box(bounds.left - 1, bounds.top - 1, bounds.right + 1, bounds.bottom + 1), piece
