"""The plain data of a finished chart."""

from __future__ import annotations

from math import cos, pi, sin

import pytest

from pullcord.drawing.geometry import (
    Mark,
    Shape,
    Symbol,
    TextLine,
    move_shape,
    outline,
    rounded,
)

LINE = TextLine("Look", 1.0, 5.0, 30.0, 16.0, "bold", "title")


def shape(symbol: Symbol) -> Shape:
    """Return a symbol of 100 by 40 px around (0, 0)."""
    mark = Mark(((0.0, 0.0), (1.0, 2.0), (-1.0, 2.0)), ((0.0, 1.0),) * 4)
    return Shape(symbol, 0.0, 0.0, 100.0, 40.0, (LINE,), mark)


def is_left_of_all_sides(
    point: tuple[float, float], corners: tuple[tuple[float, float], ...]
) -> bool:
    """Return whether a point is inside a figure whose corners go round clockwise."""
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    return all(
        (x1 - x0) * (point[1] - y0) - (y1 - y0) * (point[0] - x0) >= -1e-9
        for (x0, y0), (x1, y1) in sides
    )


def test_the_outline_of_a_terminator_holds_its_round_ends() -> None:
    """Every point of the half circle lies within the straight sides, and they touch it."""
    corners = outline(shape("terminator"))
    rim = [(30 + 20 * cos(a * pi / 180), 20 * sin(a * pi / 180)) for a in range(-90, 91)]
    assert all(is_left_of_all_sides(point, corners) for point in rim)
    assert max(x for x, _ in corners) == 50
    assert max(y for _, y in corners) == 20


@pytest.mark.parametrize(
    ("symbol", "corners"),
    [
        ("decision", {(0, -20), (50, 0), (0, 20), (-50, 0)}),
        ("process", {(-50, -20), (50, -20), (50, 20), (-50, 20)}),
        ("predefined", {(-50, -20), (50, -20), (50, 20), (-50, 20)}),
    ],
)
def test_the_outline_of_straight_symbols_is_the_symbol(
    symbol: Symbol, corners: set[tuple[float, float]]
) -> None:
    """A diamond has its four tips, a rectangle its four corners."""
    assert set(outline(shape(symbol))) == corners


def test_moving_takes_everything_along() -> None:
    """Text and hazard symbol keep their place in a symbol that is moved."""
    moved = move_shape(shape("process"), 10.006, -20)
    assert (moved.x, moved.y) == (10.01, -20.0)
    assert (moved.lines[0].x, moved.lines[0].y) == (11.01, -15.0)
    assert moved.mark is not None
    assert moved.mark.triangle == ((10.01, -20.0), (11.01, -18.0), (9.01, -18.0))


def test_zero_has_no_sign() -> None:
    """`-0.0` is another text than `0.0`, and would be other bytes."""
    assert str(rounded(-0.001)) == "0.0"
    assert rounded(1.23456) == 1.23
