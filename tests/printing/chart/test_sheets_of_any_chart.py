"""Whatever the chart, its sheets hold all of it, and nothing on them lies across anything else."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from hypothesis import HealthCheck, given, settings

from pullcord.drawing.chart import START, Chart
from pullcord.drawing.geometry import Geometry, Label, PlacedNode
from pullcord.drawing.plane import Box, Point, is_overlapping, points_along
from pullcord.printing.chart.draw import draw_sheet
from pullcord.printing.chart.joints import Joints, join
from pullcord.printing.chart.row_size import size_row, strip_style
from pullcord.printing.chart.rows import rows_of
from pullcord.printing.chart.sheets import TEXT
from pullcord.printing.chart.strips import divide, stack_rows
from tests.printing.chart.charts import charts

ROOM_PX = 1200.0
SLACK_PX = 0.02


@dataclass(frozen=True)
class Drawn:
    """All sheets of a chart."""

    chart: Chart
    sheets: tuple[Geometry, ...]
    joints: Joints

    @property
    def nodes(self) -> list[PlacedNode]:
        """The symbols of all sheets."""
        return [node for sheet in self.sheets for node in sheet.nodes]


def draw(chart: Chart, strips: int = 2) -> Drawn:
    """Put a chart on sheets of a made-up size."""
    rows = rows_of(chart)
    style = strip_style(560, rows.rows, TEXT)
    assert style is not None
    stack = stack_rows([size_row(row, style) for row in rows.rows], rows.order)
    sheets = divide(stack, strips, lambda _: ROOM_PX)
    joints = join(rows.rows, sheets)
    drawn = (draw_sheet(chart, stack, one, joints, style, 18, "sheet {sheets}") for one in sheets)
    return Drawn(chart, tuple(drawn), joints)


def ends(chart: Chart) -> set[str]:
    """Return the nodes that nothing leads on from."""
    tails = {edge.tail for edge in chart.edges}
    return {node.id for node in chart.nodes if node.id not in tails and node.id != START}


def box_of(node: PlacedNode) -> Box:
    """Return the room a symbol takes, a hair less all round."""
    shape = node.shape
    half, tall = shape.width / 2 - SLACK_PX, shape.height / 2 - SLACK_PX
    return Box(shape.x - half, shape.y - tall, shape.x + half, shape.y + tall)


def is_inside(point: Point, node: PlacedNode) -> bool:
    """Say whether a point is inside a symbol by more than a hair."""
    shape = node.shape
    across = abs(point[0] - shape.x) / (shape.width / 2)
    down = abs(point[1] - shape.y) / (shape.height / 2)
    return (across + down if node.kind == "decision" else max(across, down)) < 0.99


def is_on(point: Point, label: Label) -> bool:
    """Say whether a point is on an answer by more than a hair."""
    across = abs(point[0] - label.x) < label.width / 2 - 1
    return across and abs(point[1] - label.y) < label.height / 2 - 1


# Drawing a chart of 200 steps takes a while on a busy machine; it is still bounded.
bounded = settings(
    max_examples=25,
    deadline=None,
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


@bounded
@given(charts())
def test_no_node_and_no_arrow_is_lost(chart: Chart) -> None:
    """Each step stands once, each end behind every check it ends, each arrow is drawn once."""
    drawn = draw(chart)
    count = Counter(node.id for node in drawn.nodes if node.kind != "connector")
    leads_in = Counter(edge.head for edge in chart.edges)
    assert count == {n.id: leads_in[n.id] if n.id in ends(chart) else 1 for n in chart.nodes}
    arrows = Counter(
        (edge.tail, edge.head.removeprefix("out "), edge.answers)
        for sheet in drawn.sheets
        for edge in sheet.edges
        if not edge.tail.startswith("in ")
    )
    assert arrows == Counter((edge.tail, edge.head, edge.answers) for edge in chart.edges)


@bounded
@given(charts(most=120))
def test_connectors_come_in_pairs(chart: Chart) -> None:
    """Where an arrow leaves off, the same letter goes on with it, on the sheet that is named."""
    drawn = draw(chart)
    place = {
        node.id: (number, node.shape.lines[0].text)
        for number, sheet in enumerate(drawn.sheets, start=1)
        for node in sheet.nodes
        if node.id.startswith("in ")
    }
    for number, sheet in enumerate(drawn.sheets, start=1):
        for node in sheet.nodes:
            if node.id.startswith("out "):
                there, letter = place[node.id.replace("out ", "in ")]
                said = [line.text for line in node.shape.lines]
                assert said == [letter] if there == number else [letter, f"sheet {there}"]
    letters = [letter for _, letter in place.values()]
    assert len(set(letters)) == len(letters)
    heads = {edge.head for sheet in drawn.sheets for edge in sheet.edges}
    assert {f"out{name[2:]}" for name in place} <= heads


@bounded
@given(charts(most=80))
def test_nothing_lies_across_anything(chart: Chart) -> None:
    """Symbols overlap no other symbol, and stay within the sheet's room."""
    for sheet in draw(chart).sheets:
        boxes = [box_of(node) for node in sheet.nodes]
        assert sheet.height <= ROOM_PX + 4
        assert all(box.left >= 0 and box.right <= sheet.width for box in boxes)
        assert all(box.top >= 0 and box.bottom <= sheet.height for box in boxes)
        for number, box in enumerate(boxes):
            assert not any(is_overlapping(box, other) for other in boxes[number + 1 :])


@bounded
@given(charts(most=80))
def test_answers_lie_on_no_symbol(chart: Chart) -> None:
    """An answer stands free, inside the sheet's room."""
    for sheet in draw(chart).sheets:
        boxes = [box_of(node) for node in sheet.nodes if node.kind != "decision"]
        for edge in sheet.edges:
            if edge.label:
                label = edge.label
                half, tall = label.width / 2 - 1, label.height / 2 - 1
                own = Box(label.x - half, label.y - tall, label.x + half, label.y + tall)
                assert 0 <= own.left <= own.right <= sheet.width
                assert not any(is_overlapping(own, box) for box in boxes)


@bounded
@given(charts(most=80))
def test_arrows_run_through_nothing(chart: Chart) -> None:
    """An arrow passes beside every symbol, and beside every answer but its own."""
    for sheet in draw(chart).sheets:
        for edge in sheet.edges:
            points = [*points_along(edge.curve, 5), edge.arrow[0]]
            assert not any(is_inside(point, node) for point in points for node in sheet.nodes)
            others = [other.label for other in sheet.edges if other.label and other is not edge]
            assert not any(is_on(point, label) for point in points for label in others)


@bounded
@given(charts(most=60))
def test_an_order_that_is_told_is_kept(chart: Chart) -> None:
    """Steps stand in the order other sheets number them in, if that is as good as any."""
    rows = rows_of(chart)
    again = rows_of(chart, rows.order.nodes)
    assert again.order == rows.order
