"""Many ends of one check, listed beside the column on branches of a single line.

In a row they would make the chart as wide as they are many. ISO 5807 lets a single line leave a
symbol and part into as many as there are ways out (from memory: its text was not at hand).

For the layout engine such a list is one box: a chart is folded before it is asked, and the geometry
unfolded after. The line comes in at the box's top left corner and runs down its left side.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from pullcord.drawing.chart import Chart, Edge, Node
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
from pullcord.drawing.plane import Point
from pullcord.drawing.shape import label_of, shape_of
from pullcord.drawing.style import Style

_PREFIX = "ends:"
"""Of the id of a box; no node of a chart begins with it."""
_HEAD_PX = 8
_HEAD_HALF_PX = 3.6
_LEAD_PX = 14
"""Of a branch that is drawn beyond its answer, to the tip of its head."""
_GAP_PX = 14
"""Between an end and the next."""


@dataclass(frozen=True)
class EndList:
    """The ends of one check in a box around (0, 0), the line down its left side not drawn."""

    id: str
    tail: str
    width: float
    height: float
    ends: tuple[_End, ...]


@dataclass(frozen=True)
class _End:
    node: Node
    edge: Edge
    shape: Shape
    label: Label | None


def is_end_list(id_: str) -> bool:
    """Return whether an id is that of a box that stands for ends."""
    return id_.startswith(_PREFIX)


def own_ends(chart: Chart) -> dict[str, list[Edge]]:
    """Return, for each check, its edges to ends that nothing else leads to."""
    into = Counter(edge.head for edge in chart.edges)
    leading = {edge.tail for edge in chart.edges}
    own: dict[str, list[Edge]] = {}
    for edge in chart.edges:
        if into[edge.head] == 1 and edge.head not in leading:
            own.setdefault(edge.tail, []).append(edge)
    return own


def end_lists(chart: Chart, style: Style) -> tuple[EndList, ...]:
    """Return a list for each check that has more ends of its own than a row may hold."""
    nodes = {node.id: node for node in chart.nodes}
    return tuple(
        _end_list(tail, edges, nodes, style)
        for tail, edges in own_ends(chart).items()
        if len(edges) > style.row_most
    )


def fold(chart: Chart, lists: Sequence[EndList]) -> Chart:
    """Return the chart with one node in the place of each list's ends, and one edge to it."""
    box = {end.node.id: each.id for each in lists for end in each.ends}
    folded = {each.id: Node(each.id, "process", "", ()) for each in lists}
    nodes = dict.fromkeys(folded.get(box.get(node.id, ""), node) for node in chart.nodes)
    edges = dict.fromkeys(
        Edge(edge.tail, box[edge.head]) if edge.head in box else edge for edge in chart.edges
    )
    return replace(chart, nodes=tuple(nodes), edges=tuple(edges))


def box_shape(list_: EndList) -> Shape:
    """Return the empty box that the layout engine finds room for."""
    return Shape("process", 0.0, 0.0, list_.width, list_.height, ())


def unfold(geometry: Geometry, lists: Sequence[EndList]) -> Geometry:
    """Return the geometry with the ends in the places of the boxes."""
    if not lists:
        return geometry
    by_id = {each.id: each for each in lists}
    corners = {
        node.id: (node.shape.x - node.shape.width / 2, node.shape.y - node.shape.height / 2)
        for node in geometry.nodes
        if node.id in by_id
    }
    nodes = [node for node in geometry.nodes if node.id not in by_id]
    nodes.extend(node for id_, corner in corners.items() for node in _nodes(by_id[id_], corner))
    edges = [
        part
        for edge in geometry.edges
        for part in (_edges(edge, by_id[edge.head]) if edge.head in by_id else (edge,))
    ]
    return replace(
        geometry,
        nodes=tuple(sorted(nodes, key=lambda node: (node.shape.y, node.shape.x, node.id))),
        edges=tuple(edges),
    )


def _end_list(tail: str, edges: Sequence[Edge], nodes: Mapping[str, Node], style: Style) -> EndList:
    sized = [(e, shape_of(nodes[e.head], style), label_of(e.answers, style)) for e in edges]
    reach = max((label.width for _, _, label in sized if label), default=0.0) + _LEAD_PX
    ends, top = [], 0.0
    for edge, shape, label in sized:
        above = max(shape.height / 2, label.height + 2 if label else 0.0)
        middle = top + above
        ends.append(
            _End(
                node=nodes[edge.head],
                edge=edge,
                shape=move_shape(shape, reach + shape.width / 2, middle),
                label=label and move_label(label, label.width / 2, middle - label.height / 2 - 2),
            )
        )
        top = middle + shape.height / 2 + _GAP_PX
    width = reach + max(shape.width for _, shape, _ in sized)
    return EndList(f"{_PREFIX}{tail}", tail, rounded(width), rounded(top - _GAP_PX), tuple(ends))


def _nodes(list_: EndList, corner: Point) -> Iterator[PlacedNode]:
    for end in list_.ends:
        node = end.node
        shape = move_shape(end.shape, *corner)
        yield PlacedNode(node.id, node.kind, node.name, node.href, node.signal, shape)


def _edges(edge: PlacedEdge, list_: EndList) -> Iterator[PlacedEdge]:
    left, top = corner = edge.arrow[0]
    for end in list_.ends:
        y = rounded(top + end.shape.y)
        tip = rounded(left + end.shape.x - end.shape.width / 2)
        base = tip - _HEAD_PX, y
        yield PlacedEdge(
            tail=edge.tail,
            head=end.node.id,
            answers=end.edge.answers,
            curve=(*edge.curve, *_lines((edge.curve[-1], corner, (left, y), base))),
            arrow=((tip, y), (base[0], y - _HEAD_HALF_PX), (base[0], y + _HEAD_HALF_PX)),
            label=end.label and move_label(end.label, *corner),
        )


def _lines(points: Sequence[Point]) -> Iterator[Point]:
    """Yield control points and ends of straight lines through the points, from the first on."""
    for start, end in pairwise(points):
        yield from (start, end, end)
