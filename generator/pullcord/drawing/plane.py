"""A little plane geometry: boxes, polygons without dents, points along curves. All in px."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil, dist

Point = tuple[float, float]


@dataclass(frozen=True)
class Box:
    """An upright rectangle."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """The corners, clockwise from the top left."""
        return (
            (self.left, self.top), (self.right, self.top),
            (self.right, self.bottom), (self.left, self.bottom),
        )  # fmt: skip


def box_around(points: Iterable[Point]) -> Box:
    """Return the smallest box that holds all points."""
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def is_overlapping(one: Box, other: Box) -> bool:
    """Return whether two boxes share more than an edge."""
    return (
        one.left < other.right
        and other.left < one.right
        and one.top < other.bottom
        and other.top < one.bottom
    )


def is_meeting(box: Box, polygon: Sequence[Point]) -> bool:
    """Return whether a box and a polygon without dents share more than an edge.

    They do not exactly when a line along one of their sides parts them (separating axis theorem).
    """
    sides = (*_sides(polygon), (1.0, 0.0), (0.0, 1.0))
    return all(_is_astride(box.corners, polygon, side) for side in sides)


def points_along(curve: Sequence[Point], step_px: float) -> Iterator[Point]:
    """Yield points on a chain of cubic Bezier curves, about a step apart, from its beginning."""
    for start in range(0, len(curve) - 1, 3):
        p0, p1, p2, p3 = curve[start : start + 4]
        length = dist(p0, p1) + dist(p1, p2) + dist(p2, p3)
        count = max(1, ceil(length / step_px))
        for number in range(count):
            yield _on_cubic(p0, p1, p2, p3, number / count)
    yield curve[-1]


def _on_cubic(p0: Point, p1: Point, p2: Point, p3: Point, t: float) -> Point:
    a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
    return (
        a * p0[0] + b * p1[0] + c * p2[0] + d * p3[0],
        a * p0[1] + b * p1[1] + c * p2[1] + d * p3[1],
    )


def _sides(polygon: Sequence[Point]) -> Iterator[Point]:
    for (x0, y0), (x1, y1) in zip(polygon, (*polygon[1:], polygon[0]), strict=True):
        yield y1 - y0, x0 - x1


def _is_astride(one: Sequence[Point], other: Sequence[Point], axis: Point) -> bool:
    first, second = _shadow(one, axis), _shadow(other, axis)
    return first[0] < second[1] and second[0] < first[1]


def _shadow(points: Sequence[Point], axis: Point) -> tuple[float, float]:
    places = [x * axis[0] + y * axis[1] for x, y in points]
    return min(places), max(places)
