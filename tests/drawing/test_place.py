"""The engine's plan filled with symbols, text and arrow heads."""

from __future__ import annotations

from math import dist

import pytest

from pullcord.drawing.chart import chart_of
from pullcord.drawing.place import FREE_MOST, place, request_for, size_chart
from pullcord.drawing.plan import Plan, PlanEdge
from pullcord.drawing.style import Style
from pullcord.model.procedure import Procedure
from tests.drawing.examples import small

TWO = small(steps={"prime": {"title": "Fill it", "do": "d", "then": "done"}}, causes={})
LINE = ((50.0, 74.0), (50.0, 80.0), (50.0, 85.0), (50.0, 90.0))
PLAN = Plan(
    width_px=100.2,
    height_px=300,
    nodes=((50, 124), (50, 50), (50, 224)),
    edges=(
        PlanEdge(curve=LINE, tip=(50, 100), label=None),
        PlanEdge(curve=((50, 148), (50, 160), (50, 180), (50, 190)), tip=(50, 200), label=None),
    ),
)


def test_symbols_stand_where_the_plan_says() -> None:
    """Each centre is the plan's, moved by the margin; the chart's size is in whole px."""
    sized = size_chart(chart_of(TWO, {}), Style(margin_px=6))
    geometry = place(sized, PLAN)
    order = [node.id for node in sized.chart.nodes]
    centres = {node.id: (node.shape.x, node.shape.y) for node in geometry.nodes}
    assert [centres[id_] for id_ in order] == [(56, 130), (56, 56), (56, 230)]
    assert (geometry.width, geometry.height) == (113, 312)


def test_an_arrow_head_points_along_its_line() -> None:
    """The tip is the plan's; the two other corners are level with the line's end, even apart."""
    geometry = place(size_chart(chart_of(TWO, {}), Style(margin_px=0)), PLAN)
    tip, left, right = geometry.edges[0].arrow
    assert tip == (50, 100)
    assert (left[1], right[1]) == (90, 90)
    assert dist(left, tip) == pytest.approx(dist(right, tip))
    assert right != left


def test_the_engine_is_asked_for_sizes_and_room() -> None:
    """Symbols, arrows and answers are asked for in the chart's order; loose answers are not."""
    sized = size_chart(chart_of(small(), {}), Style())
    asked = request_for(sized, frozenset())
    assert len(asked.nodes) == len(sized.chart.nodes)
    with_room = [edge.label_px is not None for edge in asked.edges]
    assert with_room == [bool(edge.answers) for edge in sized.chart.edges]
    loose = frozenset({("step:run", "done")})
    without = request_for(sized, loose)
    assert sum(a != b for a, b in zip(asked.edges, without.edges, strict=True)) == 1


def test_a_large_chart_is_never_left_free() -> None:
    """The engine is not sent to look for the best of very many ways."""
    steps = {
        f"s{i}": {
            "title": "t",
            "do": "d",
            "ask": "q",
            "answers": {"a": f"cause c{i}", "b": f"step s{i + 1}"},
        }
        for i in range(FREE_MOST)
    }
    steps[f"s{FREE_MOST}"] = {"title": "t", "do": "d", "then": "done"}
    causes = {f"c{i}": {"title": "t", "remedy": "r"} for i in range(FREE_MOST)}
    procedure: Procedure = small(start="s0", steps=steps, causes=causes)
    free = size_chart(chart_of(procedure, {}), Style(arrangement="free"))
    column = size_chart(chart_of(procedure, {}), Style(arrangement="column"))
    assert free.hints == column.hints
