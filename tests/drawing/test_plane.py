"""Plane geometry, compared with asking point by point."""

from __future__ import annotations

from itertools import pairwise
from math import pi, sin, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.drawing.plane import Box, box_around, is_meeting, is_overlapping, points_along

DIAMOND = ((0.0, -30.0), (50.0, 0.0), (0.0, 30.0), (-50.0, 0.0))
WHOLE = st.integers(-80, 80)


@settings(max_examples=100, deadline=None, print_blob=True)
@given(left=WHOLE, top=WHOLE, wide=st.integers(1, 60), high=st.integers(1, 60))
def test_meeting_a_diamond_agrees_with_its_equation(
    left: int, top: int, wide: int, high: int
) -> None:
    """A box meets the diamond |x|/50 + |y|/30 < 1 just when its nearest point is in it."""
    box = Box(left, top, left + wide, top + high)
    x = min(max(0, box.left), box.right)
    y = min(max(0, box.top), box.bottom)
    # The nearest corner by the equation need not be nearest to the middle: ask along all edges.
    points = [(x, y)] + [
        (box.left + wide * i / 100, box.top + high * j / 100)
        for i in range(101)
        for j in ((0, 100) if i not in (0, 100) else range(101))
    ]
    nearest = min(abs(px) / 50 + abs(py) / 30 for px, py in points)
    if abs(nearest - 1) > 0.02:
        assert is_meeting(box, DIAMOND) == (nearest < 1)


@pytest.mark.parametrize(
    ("other", "expected"),
    [
        (Box(5, 5, 15, 15), True),
        (Box(10, 0, 20, 10), False),
        (Box(0, 11, 10, 20), False),
        (Box(2, 2, 3, 3), True),
    ],
    ids=["corner", "shared edge", "apart", "inside"],
)
def test_overlap_of_boxes(other: Box, expected: bool) -> None:
    """Boxes overlap when they share an area; an edge is no area."""
    assert is_overlapping(Box(0, 0, 10, 10), other) is expected
    assert is_overlapping(other, Box(0, 0, 10, 10)) is expected


def test_points_follow_a_circle() -> None:
    """The usual cubic for a quarter circle stays within 0.03 % of the radius.

    Constant 4/3 (sqrt 2 - 1) and error bound 0.00027: Goldapp, Computer Aided Geometric Design 8
    (1991) 227-238.
    """
    k = 4 / 3 * (sqrt(2) - 1)
    points = list(points_along([(1, 0), (1, k), (k, 1), (0, 1)], 0.05))
    assert all(abs(sqrt(x * x + y * y) - 1) < 0.00028 for x, y in points)
    assert points[0] == (1, 0)
    assert points[-1] == (0, 1)


def test_points_are_no_further_apart_than_asked() -> None:
    """On a straight chain of curves the steps are even and keep to the step."""
    curve = [(0.0, 10.0 * i) for i in range(7)]
    points = list(points_along(curve, 6))
    gaps = [b[1] - a[1] for a, b in pairwise(points)]
    assert max(gaps) <= 6 + 1e-9
    assert points[-1] == (0.0, 60.0)


def test_box_around_points() -> None:
    """The box touches the outermost points."""
    wave = [(x, sin(x * pi / 2)) for x in range(4)]
    assert box_around(wave) == Box(0, -1, 3, 1)
