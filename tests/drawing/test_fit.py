"""Whole geometries: nothing is lost, nothing lies on anything else."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.drawing.chart import START, chart_of
from pullcord.drawing.fit import fit_chart, geometry_of, least_width_px
from pullcord.drawing.geometry import Geometry
from pullcord.drawing.place import size_chart
from pullcord.drawing.plane import points_along
from pullcord.drawing.style import SCREEN_STYLES, Style
from pullcord.graph import procedure_graph
from pullcord.model.procedure import Procedure
from tests.drawing.examples import (
    ORCHARD_BOXES,
    labels_on_labels,
    labels_on_nodes,
    orchard,
    small,
    texts_outside,
    ugly,
)
from tests.drawing.random_procedures import procedures


def arrows(geometry: Geometry) -> Counter[tuple[str, str]]:
    """Count the drawn arrows, taking copies of an end for the end."""
    return Counter((edge.tail, edge.head.split("#")[0]) for edge in geometry.edges)


@settings(max_examples=40, deadline=None, print_blob=True)
@given(procedure=procedures(), style=st.sampled_from(SCREEN_STYLES))
def test_everything_is_there_and_nothing_collides(procedure: Procedure, style: Style) -> None:
    """Arrows once each; steps once; text inside; answers on no symbol and on no other answer."""
    graph = procedure_graph(procedure)
    geometry = geometry_of(chart_of(procedure, {}), style, "built-in")
    assert arrows(geometry) == Counter([(START, "step:s0"), *graph.edges])
    ids = [node.id for node in geometry.nodes]
    assert len(set(ids)) == len(ids)
    assert {id_.split("#")[0] for id_ in ids} == {START, *graph.nodes}
    assert not any("#" in id_ for id_ in ids if id_.startswith("step:"))
    assert texts_outside(geometry) == []
    assert labels_on_nodes(geometry) == []
    assert labels_on_labels(geometry) == []
    assert all(bool(edge.answers) == bool(edge.label) for edge in geometry.edges)


@pytest.mark.parametrize("style", SCREEN_STYLES, ids=range(len(SCREEN_STYLES)))
@pytest.mark.parametrize("make", [orchard, small, ugly])
def test_examples_are_sound_in_every_style(make: Callable[[], Procedure], style: Style) -> None:
    """Twenty steps, all kinds of end, and texts that try everything."""
    geometry = geometry_of(chart_of(make(), ORCHARD_BOXES), style, "built-in")
    assert texts_outside(geometry) == []
    assert labels_on_nodes(geometry) == []
    assert labels_on_labels(geometry) == []


@pytest.mark.parametrize("style", SCREEN_STYLES, ids=range(len(SCREEN_STYLES)))
def test_everything_is_on_the_page(style: Style) -> None:
    """No symbol, arrow or answer leaves the chart's own area."""
    geometry = geometry_of(chart_of(orchard(), {}), style, "built-in")
    points = [at for edge in geometry.edges for at in (*points_along(edge.curve, 4), *edge.arrow)]
    for node in geometry.nodes:
        points.append((node.shape.x - node.shape.width / 2, node.shape.y - node.shape.height / 2))
        points.append((node.shape.x + node.shape.width / 2, node.shape.y + node.shape.height / 2))
    for edge in geometry.edges:
        if edge.label:
            half = edge.label.width / 2
            points += [(edge.label.x - half, edge.label.y), (edge.label.x + half, edge.label.y)]
    assert all(0 <= x <= geometry.width and 0 <= y <= geometry.height for x, y in points)


def test_twenty_steps_fit_a_tablet_held_upright() -> None:
    """The orchard's chart is no wider than the page of a 768 px tablet, with type at 16 px."""
    geometry = fit_chart(chart_of(orchard(), ORCHARD_BOXES), SCREEN_STYLES, 712, "built-in")
    assert geometry.width <= 712
    sizes = {line.size for node in geometry.nodes for line in node.shape.lines}
    assert sizes == {16}


def test_the_roomiest_style_that_fits_is_taken() -> None:
    """With room enough the chart is left free; with none at all the narrowest is taken."""
    chart = chart_of(orchard(), {})
    each = [geometry_of(chart, style, "built-in") for style in SCREEN_STYLES]
    assert fit_chart(chart, SCREEN_STYLES, 5000, "built-in") == each[0]
    assert fit_chart(chart, SCREEN_STYLES, 10, "built-in") == min(each, key=lambda g: g.width)


def test_answers_stand_near_their_question() -> None:
    """However far an arrow runs, its answer begins within a hand's breadth of its check."""
    geometry = geometry_of(chart_of(orchard(), {}), SCREEN_STYLES[1], "built-in")
    far = [
        edge.answers
        for edge in geometry.edges
        if edge.label and abs(edge.label.y - edge.curve[0][1]) > 150
    ]
    assert far == []


def test_nodes_come_in_reading_order() -> None:
    """Whoever tabs through the chart goes down the page."""
    geometry = geometry_of(chart_of(orchard(), {}), SCREEN_STYLES[1], "built-in")
    heights = [node.shape.y for node in geometry.nodes]
    assert heights == sorted(heights)
    assert geometry.nodes[0].id == START


def test_two_hundred_steps_are_drawn() -> None:
    """A very long procedure of the usual kind still has its chart, sound and complete."""
    steps = {
        f"s{i}": {
            "title": f"Look at part {i}",
            "do": "d",
            "ask": "How is it?",
            "answers": {
                "bad": f"cause c{i % 40}",
                "fine": f"step s{i + 1}",
                "not there": f"step s{min(i + 3, 199)}" if i % 8 == 0 else "done",
            },
        }
        for i in range(199)
    }
    steps["s199"] = {"title": "Last", "do": "d", "then": "done"}
    causes = {f"c{i}": {"title": f"Part {i} bad", "remedy": "r"} for i in range(40)}
    procedure = small(start="s0", steps=steps, causes=causes)
    geometry = fit_chart(chart_of(procedure, {}), SCREEN_STYLES, 712, "built-in")
    assert arrows(geometry) == Counter([(START, "step:s0"), *procedure_graph(procedure).edges])
    assert texts_outside(geometry) == []
    assert labels_on_labels(geometry) == []


@pytest.mark.parametrize("style", SCREEN_STYLES, ids=range(len(SCREEN_STYLES)))
@pytest.mark.parametrize("make", [orchard, small, ugly])
def test_no_layout_is_narrower_than_its_widest_row_of_ends(
    make: Callable[[], Procedure], style: Style
) -> None:
    """So that a style in which that row is too wide need not be tried."""
    chart = chart_of(make(), ORCHARD_BOXES)
    least = least_width_px(size_chart(chart, style))
    assert 0 < least <= geometry_of(chart, style, "built-in").width
