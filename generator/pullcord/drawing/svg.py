"""A flowchart as an SVG element to stand inside a page. Which mark goes where is decided here."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, StrictUndefined, TemplateError

from pullcord.drawing.geometry import (
    Geometry,
    PlacedEdge,
    PlacedNode,
    Shape,
    TextLine,
    edge_id,
    node_id,
    outline,
)
from pullcord.drawing.plane import Point
from pullcord.drawing.shape import BAR_PX
from pullcord.errors import PullcordError
from pullcord.source.places import site_templates

LEAST_SCALE = 0.9
"""A screen that is hardly too narrow shrinks a chart by this much, 16 px type to 14.4 px, since
that is better than to slide it sideways. A narrower screen has to slide it."""
TYPE_PX = 16
"""The size that the stylesheet gives a chart's type, and its windows' too."""
_TEMPLATE = "drawing/chart.svg.j2"


@dataclass(frozen=True)
class TextView:
    """One line of text, its numbers written out."""

    text: str
    css: str
    x: str
    y: str
    width: str
    size: str
    """Empty for `TYPE_PX`."""


@dataclass(frozen=True)
class NodeView:
    """One symbol: its link, its outlines and its text."""

    id: str
    css: str
    name: str
    href: str
    outline: str
    """SVG path data."""
    bars: str
    """SVG path data of a predefined process's inner lines."""
    triangle: str
    bar: str
    lines: tuple[TextView, ...]


@dataclass(frozen=True)
class EdgeView:
    """One arrow and its answers."""

    id: str
    line: str
    arrow: str
    lines: tuple[TextView, ...]


@dataclass(frozen=True)
class ChartView:
    """A whole chart, as the template lays it out."""

    id: str
    title: str
    summary: str
    width: str
    height: str
    least_width: str
    edges: tuple[EdgeView, ...]
    nodes: tuple[NodeView, ...]


def render_chart(geometry: Geometry, template_dirs: tuple[Path, ...] = ()) -> str:
    """Return an `<svg>` element; everything in it is escaped. `template_dirs` go before our own.

    Raises PullcordError when a project's own template cannot be used.
    """
    templates = _environment((*template_dirs, site_templates()))
    try:
        return templates.get_template(_TEMPLATE).render(chart=_chart_view(geometry))
    except TemplateError as error:
        raise PullcordError(f"template {_TEMPLATE}: {error}") from error


@cache
def _environment(folders: tuple[Path, ...]) -> Environment:
    return Environment(
        loader=ChoiceLoader([FileSystemLoader(folder) for folder in folders]),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _chart_view(geometry: Geometry) -> ChartView:
    return ChartView(
        id=f"pc-chart-{geometry.name}",
        title=geometry.title,
        summary=geometry.summary,
        width=_number(geometry.width),
        height=_number(geometry.height),
        least_width=_number(geometry.width * LEAST_SCALE),
        edges=tuple(
            _edge_view(edge, edge_id(geometry, place)) for place, edge in enumerate(geometry.edges)
        ),
        nodes=tuple(
            _node_view(node, node_id(geometry, place)) for place, node in enumerate(geometry.nodes)
        ),
    )


def _node_view(node: PlacedNode, name: str) -> NodeView:
    shape = node.shape
    css = [
        "pc-node",
        f"pc-{node.kind}",
        *([f"pc-{node.signal.name.lower()}"] if node.signal else ()),
    ]
    return NodeView(
        id=name,
        css=" ".join(css),
        name=node.name,
        href=node.href or "",
        outline=_stadium(shape) if shape.symbol == "terminator" else _polygon(outline(shape)),
        bars=_bars(shape) if shape.symbol == "predefined" else "",
        triangle=_polygon(shape.mark.triangle) if shape.mark else "",
        bar=_polygon(shape.mark.bar) if shape.mark else "",
        lines=tuple(_text_views(shape.lines)),
    )


def _edge_view(edge: PlacedEdge, name: str) -> EdgeView:
    first, *rest = (_point(point) for point in edge.curve)
    return EdgeView(
        id=name,
        line=f"M{first}C{' '.join(rest)}",
        arrow=_polygon(edge.arrow),
        lines=tuple(_text_views(edge.label.lines)) if edge.label else (),
    )


def _text_views(lines: Iterable[TextLine]) -> Iterator[TextView]:
    for line in lines:
        yield TextView(
            text=line.text,
            css=f"pc-{line.role}",
            x=_number(line.x),
            y=_number(line.y),
            width=f"{line.width:.2f}",
            size="" if line.size == TYPE_PX else _number(line.size),
        )


def _stadium(shape: Shape) -> str:
    radius = _number(shape.height / 2)
    left, right = (
        shape.x - (shape.width - shape.height) / 2,
        shape.x + (shape.width - shape.height) / 2,
    )
    top, bottom = shape.y - shape.height / 2, shape.y + shape.height / 2
    arc = f"A{radius} {radius} 0 0 1 "
    return (
        f"M{_point((left, top))}L{_point((right, top))}{arc}{_point((right, bottom))}"
        f"L{_point((left, bottom))}{arc}{_point((left, top))}Z"
    )


def _bars(shape: Shape) -> str:
    top, bottom = shape.y - shape.height / 2, shape.y + shape.height / 2
    inner = shape.width / 2 - BAR_PX
    return "".join(
        f"M{_point((x, top))}L{_point((x, bottom))}" for x in (shape.x - inner, shape.x + inner)
    )


def _polygon(points: Iterable[Point]) -> str:
    return f"M{'L'.join(_point(point) for point in points)}Z"


def _point(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _number(value: float) -> str:
    """Write a length out to a tenth of a pixel, which nobody sees."""
    return f"{value:.1f}".removesuffix(".0")
