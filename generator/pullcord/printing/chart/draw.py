"""The strips of a sheet as geometry: every symbol, answer and arrow with its place, in px."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import dist

from pullcord.drawing.chart import Chart, Edge, Node, Paragraph
from pullcord.drawing.geometry import (
    Geometry,
    Label,
    PlacedEdge,
    PlacedNode,
    Shape,
    TextLine,
    move_label,
    move_shape,
    rounded,
)
from pullcord.drawing.measure import text_width_px
from pullcord.drawing.plane import Point
from pullcord.drawing.shape import shape_of
from pullcord.drawing.style import Style
from pullcord.printing.chart.joints import Joints
from pullcord.printing.chart.row_size import (
    ARROW_PX,
    CIRCLE_PX,
    GAP_PX,
    LANE_PX,
    TRUNK_PX,
    SizedAside,
    SizedRow,
    StripStyle,
    above_px,
    top_px,
)
from pullcord.printing.chart.strips import Stack, StripSheet

SIDE_PX = 3.0
"""Kept free left and right of a sheet's strips, for the width of their lines."""
_HEAD_PX = 8.0
_HEAD_HALF_PX = 3.6


@dataclass(frozen=True)
class _Standing:
    """A row where it stands."""

    row: SizedRow
    position: int
    y: float
    """Of the step's middle."""
    end_y: float
    """Where all of it ends."""

    @property
    def top_y(self) -> float:
        return self.y - self.row.shape.height / 2

    @property
    def bottom_y(self) -> float:
        return self.y + self.row.shape.height / 2


@dataclass(frozen=True)
class _Strip:
    style: StripStyle
    joints: Joints
    other_sheet: str
    rows: dict[int, _Standing]
    """By position."""
    x: float
    """Of its left edge."""

    @property
    def middle(self) -> float:
        return self.x + self.style.step_px / 2

    def join_y(self, position: int) -> float:
        """Return where ways that do not come from the row above meet the row's own."""
        row = self.rows[position]
        return row.end_y - row.row.height_px - ARROW_PX


_Part = PlacedNode | PlacedEdge


def draw_sheet(
    chart: Chart,
    stack: Stack,
    sheet: StripSheet,
    joints: Joints,
    style: StripStyle,
    between_px: float,
    other_sheet: str,
) -> Geometry:
    """Return one sheet of a chart, its strips side by side.

    `other_sheet` stands beside a connector to another sheet; `{sheets}` in it is filled in.
    """
    every_px = style.width_px + between_px
    parts: list[_Part] = []
    for number, (first, end) in enumerate(sheet.strips):
        rows = {row.position: row for row in _standing(stack, first, end)}
        strip = _Strip(style, joints, other_sheet, rows, SIDE_PX + number * every_px)
        for row in rows.values():
            parts += _draw_row(strip, row)
    return Geometry(
        name=chart.name,
        title=chart.title,
        summary=chart.summary,
        width=rounded(2 * SIDE_PX + len(sheet.strips) * every_px - between_px),
        height=rounded(max(stack.height_px(strip) for strip in sheet.strips) + 2),
        nodes=tuple(part for part in parts if isinstance(part, PlacedNode)),
        edges=tuple(part for part in parts if isinstance(part, PlacedEdge)),
    )


def _standing(stack: Stack, first: int, end: int) -> Iterator[_Standing]:
    y = 1 + top_px(stack.rows[first])
    for position in range(first, end):
        row = stack.rows[position]
        if position > first:
            y += above_px(stack.rows[position - 1], row)
        yield _Standing(row, position, y + row.height_px / 2, y + row.height_px)
        y += row.height_px


def _draw_row(strip: _Strip, row: _Standing) -> Iterator[_Part]:
    node = row.row.row.node
    if row.position in strip.joints.letters:
        yield from _arrival(strip, row)
    yield _placed(node, move_shape(row.row.shape, strip.middle, row.y))
    yield from _draw_asides(strip, row)
    if row.row.row.down:
        yield from _draw_down(strip, row, row.row.row.down)


def _arrival(strip: _Strip, row: _Standing) -> Iterator[_Part]:
    """Draw the connector that leads to a row: above it at the top of a strip, else at its left."""
    here, head = row.position, row.row.row.node.id
    sources = ", ".join(str(number) for number in strip.joints.sources[here])
    said = strip.other_sheet.format(sheets=sources) if sources else ""
    radius, middle = CIRCLE_PX / 2, strip.middle
    if here == min(strip.rows):
        centre = (middle, radius + 1)
        path = [(middle, CIRCLE_PX + 1), (middle, row.top_y)]
        ref = middle + radius + 4, centre[1]
    else:
        level = strip.join_y(here)
        centre = (strip.x + radius + 1, level)
        path = [(strip.x + CIRCLE_PX + 1, level), (middle, level), (middle, row.top_y)]
        ref = strip.x + CIRCLE_PX + 4, level - strip.style.text.line_px / 2 - 1
    yield _connector(strip, f"in {head}", here, centre, said, ref)
    yield _edge(Edge(f"in {head}", head), path, None)


def _draw_asides(strip: _Strip, row: _Standing) -> Iterator[_Part]:
    asides = row.row.asides
    total = sum(aside.height_px for aside in asides) + GAP_PX * max(0, len(asides) - 1)
    y = row.y - total / 2
    for aside in asides:
        yield from _draw_aside(strip, row, aside, y + aside.height_px / 2)
        y += aside.height_px + GAP_PX


def _draw_aside(strip: _Strip, row: _Standing, aside: SizedAside, y: float) -> Iterator[_Part]:
    edge, style = aside.aside.edge, strip.style
    trunk, ends = strip.x + style.step_px + TRUNK_PX, strip.x + style.ends_px
    label = _left_label(aside.label, trunk + 6, y) if aside.label else None
    path = [(strip.middle + row.row.shape.width / 2, row.y), (trunk, row.y), (trunk, y)]
    if aside.aside.end and aside.end:
        yield _edge(edge, [*path, (ends, y)], label)
        yield _placed(aside.aside.end, move_shape(aside.end, ends + aside.end.width / 2, y))
        return
    head = strip.joints.place[edge.head]
    lane = strip.joints.lanes.get((row.position, head))
    if lane is not None:
        x, level = strip.x + style.lanes_px + (lane + 0.5) * LANE_PX, strip.join_y(head)
        down = [(x, y), (x, level), (strip.middle, level), (strip.middle, strip.rows[head].top_y)]
        yield _edge(edge, [*path, *down], label)
        return
    centre = (ends + CIRCLE_PX / 2, y)
    yield _edge(replace(edge, head=f"out {edge.head}"), [*path, (ends, y)], label)
    yield _way_out(strip, row, edge, centre)


def _draw_down(strip: _Strip, row: _Standing, edge: Edge) -> Iterator[_Part]:
    middle, label = strip.middle, row.row.down
    placed = _left_label(label, middle + 6, row.end_y + 2 + label.height / 2) if label else None
    below = strip.rows.get(row.position + 1)
    if below:
        yield _edge(edge, [(middle, row.bottom_y), (middle, below.top_y)], placed)
        return
    top = row.end_y + (label.height if label else 4.0) + ARROW_PX
    path = [(middle, row.bottom_y), (middle, top)]
    yield _edge(replace(edge, head=f"out {edge.head}"), path, placed)
    yield _way_out(strip, row, edge, (middle, top + CIRCLE_PX / 2))


def _way_out(strip: _Strip, row: _Standing, edge: Edge, centre: Point) -> PlacedNode:
    head = strip.joints.place[edge.head]
    sheet = strip.joints.sheets[head]
    is_other = sheet != strip.joints.sheets[row.position]
    said = strip.other_sheet.format(sheets=sheet) if is_other else ""
    ref = centre[0] + CIRCLE_PX / 2 + 4, centre[1]
    return _connector(strip, f"out {edge.head}", head, centre, said, ref)


def _connector(
    strip: _Strip, id_: str, head: int, centre: Point, said: str, ref: Point
) -> PlacedNode:
    """Return a circle with its letter; `said` begins at `ref`, centred on that height."""
    mark, text = strip.joints.letters[head], strip.style.text
    circle = replace(text, least_height_px=CIRCLE_PX, padding_px=0)
    node = Node(id_, "connector", f"Connector {mark} {said}".strip(), (Paragraph(mark, "title"),))
    round_ = replace(shape_of(node, circle), width=CIRCLE_PX, height=CIRCLE_PX)
    shape = move_shape(round_, *centre)
    if said:
        shape = replace(shape, lines=(*shape.lines, _line(said, ref, text)))
    return PlacedNode(id_, "connector", node.name, None, None, shape)


def _line(said: str, left: Point, text: Style) -> TextLine:
    width = text_width_px(said, text.type_px, "regular")
    return TextLine(
        text=said,
        x=rounded(left[0] + width / 2),
        y=rounded(left[1] + 0.35 * text.type_px),
        width=rounded(width),
        size=text.type_px,
        weight="regular",
        role="detail",
    )


def _left_label(label: Label, left: float, y: float) -> Label:
    """Return the label beginning at `left`, centred on y."""
    return move_label(label, left + label.width / 2, y)


def _placed(node: Node, shape: Shape) -> PlacedNode:
    return PlacedNode(node.id, node.kind, node.name, None, node.signal, shape)


def _edge(edge: Edge, path: Sequence[Point], label: Label | None) -> PlacedEdge:
    """Return an arrow along straight lines, its head at the end of the path."""
    points = [point for point, after in pairwise([*path, (-1.0, -1.0)]) if point != after]
    (x0, y0), tip = points[-2], points[-1]
    length = dist((x0, y0), tip)
    along = (tip[0] - x0) / length, (tip[1] - y0) / length
    base = tip[0] - along[0] * _HEAD_PX, tip[1] - along[1] * _HEAD_PX
    side = -along[1] * _HEAD_HALF_PX, along[0] * _HEAD_HALF_PX
    corners = [base[0] + side[0], base[1] + side[1]], [base[0] - side[0], base[1] - side[1]]
    points[-1] = base
    curve = [points[0]]
    for start, end in pairwise(points):
        curve += [start, end, end]
    return PlacedEdge(
        tail=edge.tail,
        head=edge.head,
        answers=edge.answers,
        curve=tuple(_rounded(point) for point in curve),
        arrow=(_rounded(tip), _rounded(corners[0]), _rounded(corners[1])),
        label=label,
    )


def _rounded(point: Sequence[float]) -> Point:
    return rounded(point[0]), rounded(point[1])
