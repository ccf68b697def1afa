"""From a chart to its geometry: sizes for the engine, and the engine's plan filled with text."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from pullcord.drawing.arrange import Hints, Pair, arranged, hints_for
from pullcord.drawing.chart import Chart, Edge, Node
from pullcord.drawing.ends import EndList, box_shape, end_lists, fold, is_end_list
from pullcord.drawing.geometry import (
    Geometry,
    Label,
    PlacedEdge,
    PlacedNode,
    Shape,
    move_label,
    move_shape,
    rounded,
)
from pullcord.drawing.plan import Plan, PlanEdge, Request, RequestEdge, RequestNode
from pullcord.drawing.plane import Point
from pullcord.drawing.shape import label_of, shape_of
from pullcord.drawing.style import Style

FREE_MOST = 60
"""A chart of more symbols always gets a column: left free it is too wide, and may take minutes."""
_ARROW_HALF_WIDTH = 0.45
"""Of a head's length."""


@dataclass(frozen=True)
class SizedChart:
    """An arranged chart whose symbols and answers have sizes, all still around (0, 0)."""

    chart: Chart
    style: Style
    hints: Hints
    shapes: tuple[Shape, ...]
    labels: tuple[Label | None, ...]
    lists: tuple[EndList, ...]
    """What stands folded in the chart."""


def size_chart(chart: Chart, style: Style) -> SizedChart:
    """Arrange a chart and measure every symbol and every answer."""
    arrangement = style.arrangement if len(chart.nodes) <= FREE_MOST else "column"
    whole = arranged(chart, arrangement, style.reach)
    lists = end_lists(whole, style) if arrangement == "column" else ()
    boxes = {each.id: box_shape(each) for each in lists}
    drawn = fold(whole, lists)
    return SizedChart(
        chart=drawn,
        style=style,
        hints=hints_for(drawn, arrangement),
        shapes=tuple(boxes.get(node.id) or shape_of(node, style) for node in drawn.nodes),
        labels=tuple(label_of(edge.answers, style) for edge in drawn.edges),
        lists=lists,
    )


def request_for(sized: SizedChart, loose: frozenset[Pair]) -> Request:
    """Return what the layout engine must be asked; no room is asked for the answers of `loose`."""
    names = (*(node.id for node in sized.chart.nodes), *sized.hints.posts)
    numbers = {name: number for number, name in enumerate(names)}

    return Request(
        nodes=(
            *(RequestNode(s.symbol, s.width, s.height) for s in sized.shapes),
            *(RequestNode("process", 2, 2) for _ in sized.hints.posts),
        ),
        edges=tuple(
            RequestEdge(
                tail=numbers[edge.tail],
                head=numbers[edge.head],
                is_straight=(edge.tail, edge.head) in sized.hints.straight,
                label_px=_room(label) if label and (edge.tail, edge.head) not in loose else None,
                is_to_corner=is_end_list(edge.head),
            )
            for edge, label in zip(sized.chart.edges, sized.labels, strict=True)
        ),
        below=tuple((numbers[above], numbers[below]) for above, below in sized.hints.below),
        rows=tuple(tuple(numbers[name] for name in row) for row in sized.hints.rows),
        beside_px=sized.style.beside_px,
        below_px=sized.style.below_px,
    )


def place(sized: SizedChart, plan: Plan) -> Geometry:
    """Return the geometry of a chart by the engine's plan."""
    margin = sized.style.margin_px
    centres = plan.nodes[: len(sized.shapes)]
    nodes = [
        _place_node(node, move_shape(shape, x + margin, y + margin))
        for node, shape, (x, y) in zip(sized.chart.nodes, sized.shapes, centres, strict=True)
    ]
    edges = [
        _place_edge(edge, label, drawn, margin)
        for edge, label, drawn in zip(sized.chart.edges, sized.labels, plan.edges, strict=True)
    ]
    return Geometry(
        name=sized.chart.name,
        title=sized.chart.title,
        summary=sized.chart.summary,
        # Whole px, so that no browser scales the chart by a hair.
        width=float(ceil(plan.width_px + 2 * margin)),
        height=float(ceil(plan.height_px + 2 * margin)),
        nodes=tuple(sorted(nodes, key=lambda node: (node.shape.y, node.shape.x, node.id))),
        edges=tuple(edges),
    )


def _place_node(node: Node, shape: Shape) -> PlacedNode:
    return PlacedNode(node.id, node.kind, node.name, node.href, node.signal, shape)


def _place_edge(edge: Edge, label: Label | None, drawn: PlanEdge, margin: float) -> PlacedEdge:
    curve = tuple(_inward(point, margin) for point in drawn.curve)
    return PlacedEdge(
        tail=edge.tail,
        head=edge.head,
        answers=edge.answers,
        curve=curve,
        arrow=_arrow(_inward(drawn.tip, margin), curve[-1]),
        label=_place_label(label, drawn.label, margin) if label else None,
    )


def _place_label(label: Label, centre: Point | None, margin: float) -> Label:
    return label if centre is None else move_label(label, *_inward(centre, margin))


def _room(label: Label) -> tuple[float, float]:
    return label.width, label.height


def _arrow(tip: Point, base: Point) -> tuple[Point, Point, Point]:
    back_x, back_y = base[0] - tip[0], base[1] - tip[1]
    side_x, side_y = -back_y * _ARROW_HALF_WIDTH, back_x * _ARROW_HALF_WIDTH
    left = rounded(base[0] + side_x), rounded(base[1] + side_y)
    right = rounded(base[0] - side_x), rounded(base[1] - side_y)
    return tip, left, right


def _inward(point: Point, margin: float) -> Point:
    return rounded(point[0] + margin), rounded(point[1] + margin)
