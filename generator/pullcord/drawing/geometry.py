"""Where everything in a finished flowchart is. Plain data: a page or a sheet is drawn from it.

Lengths are px of 1/96 inch, y grows downward, the origin is the top left corner. They are rounded
to 0.01 px so that the same chart has the same bytes everywhere.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import pi, tan
from typing import Literal

from pullcord.drawing.chart import Kind, Role
from pullcord.drawing.font import Weight
from pullcord.drawing.plane import Point
from pullcord.safety.box import SignalWord

LineRole = Role | Literal["signal", "answer"]
Symbol = Literal["terminator", "process", "decision", "predefined"]
"""ISO 5807: stadium, rectangle, diamond, rectangle with doubled sides."""


@dataclass(frozen=True)
class TextLine:
    """One line of text, centred on x."""

    text: str
    x: float
    y: float
    """Of the baseline."""
    width: float
    """As measured; whoever draws it keeps to this width."""
    size: float
    weight: Weight
    role: LineRole


@dataclass(frozen=True)
class Mark:
    """A hazard symbol: three corners of a triangle, four of the bar in it."""

    triangle: tuple[Point, ...]
    bar: tuple[Point, ...]


@dataclass(frozen=True)
class Shape:
    """A symbol with its text around its own centre (0, 0), or where it was placed."""

    symbol: Symbol
    x: float
    """Of the centre."""
    y: float
    """Of the centre."""
    width: float
    height: float
    lines: tuple[TextLine, ...]
    mark: Mark | None = None


@dataclass(frozen=True)
class PlacedNode:
    """A node of the chart with its shape."""

    id: str
    kind: Kind
    name: str
    """What a screen reader says."""
    href: str | None
    signal: SignalWord | None
    shape: Shape


@dataclass(frozen=True)
class Label:
    """The answers along an edge: a box around (x, y) and its lines."""

    x: float
    y: float
    width: float
    height: float
    lines: tuple[TextLine, ...]


@dataclass(frozen=True)
class PlacedEdge:
    """An arrow: a chain of cubic Bezier curves and a head."""

    tail: str
    head: str
    answers: tuple[str, ...]
    curve: tuple[Point, ...]
    """The first point, then two control points and an end point for each curve."""
    arrow: tuple[Point, Point, Point]
    """The tip and the two other corners of the filled head."""
    label: Label | None


@dataclass(frozen=True)
class Geometry:
    """A whole flowchart. Nodes are in reading order: from the top, then from the left."""

    name: str
    title: str
    summary: str
    width: float
    height: float
    nodes: tuple[PlacedNode, ...]
    edges: tuple[PlacedEdge, ...]


def node_id(geometry: Geometry, place: int) -> str:
    """Return the id that the node at a place in a chart has on a page."""
    return f"{geometry.name}-box-{place}"


def edge_id(geometry: Geometry, place: int) -> str:
    """Return the id that the edge at a place in a chart has on a page."""
    return f"{geometry.name}-arrow-{place}"


def outline(shape: Shape) -> tuple[Point, ...]:
    """Return the corners of a figure with straight sides around the symbol, clockwise.

    It is the symbol itself, but for a terminator: there each round end is cut to half an octagon.
    """
    left, right = shape.x - shape.width / 2, shape.x + shape.width / 2
    top, bottom = shape.y - shape.height / 2, shape.y + shape.height / 2
    if shape.symbol == "decision":
        return (shape.x, top), (right, shape.y), (shape.x, bottom), (left, shape.y)
    if shape.symbol == "terminator":
        half_side = shape.height / 2 * tan(pi / 8)
        cut = shape.height / 2 - half_side
        return (
            (left + cut, top), (right - cut, top),
            (right, shape.y - half_side), (right, shape.y + half_side),
            (right - cut, bottom), (left + cut, bottom),
            (left, shape.y + half_side), (left, shape.y - half_side),
        )  # fmt: skip
    return (left, top), (right, top), (right, bottom), (left, bottom)


def move_shape(shape: Shape, x: float, y: float) -> Shape:
    """Return the shape with everything in it moved by x and y."""
    return replace(
        shape,
        x=rounded(shape.x + x),
        y=rounded(shape.y + y),
        lines=move_lines(shape.lines, x, y),
        mark=None if shape.mark is None else _move_mark(shape.mark, x, y),
    )


def move_lines(lines: tuple[TextLine, ...], x: float, y: float) -> tuple[TextLine, ...]:
    """Return the lines moved by x and y."""
    return tuple(replace(line, x=rounded(line.x + x), y=rounded(line.y + y)) for line in lines)


def move_label(label: Label, x: float, y: float) -> Label:
    """Return the label with its lines moved by x and y."""
    lines = move_lines(label.lines, x, y)
    return replace(label, x=rounded(label.x + x), y=rounded(label.y + y), lines=lines)


def rounded(length_px: float) -> float:
    """Return the length to the nearest 0.01 px, never as minus zero."""
    return round(length_px, 2) + 0.0


def _move_mark(mark: Mark, x: float, y: float) -> Mark:
    return Mark(_moved(mark.triangle, x, y), _moved(mark.bar, x, y))


def _moved(points: tuple[Point, ...], x: float, y: float) -> tuple[Point, ...]:
    return tuple((rounded(px + x), rounded(py + y)) for px, py in points)
