"""How charts are arranged."""

from __future__ import annotations

from hypothesis import given, settings

from pullcord.drawing.arrange import arranged, hints_for
from pullcord.drawing.chart import Chart, Edge, Node, chart_of
from pullcord.model.procedure import Procedure
from tests.drawing.examples import orchard, small
from tests.drawing.random_procedures import procedures


def steps_from_the_top(chart: Chart) -> list[str]:
    """Return the column by following what stands straight below, from the start."""
    hints = hints_for(chart, "column")
    below = dict([*hints.straight, *hints.below])
    node, found = "start", []
    while node in below:
        found.append(node)
        node = below[node]
    return [*found, node]


def test_column_holds_every_step_of_the_orchard_once() -> None:
    """From the start down, each step follows one that leads to it or a branch that ended."""
    chart = arranged(chart_of(orchard(), {}), "column", 1)
    column = [node for node in steps_from_the_top(chart) if node.startswith("step:")]
    assert sorted(column) == sorted(f"step:{name}" for name in orchard().steps)
    assert column[:3] == ["step:make-safe", "step:smell", "step:plug-look"]


@settings(max_examples=60, deadline=None, print_blob=True)
@given(procedure=procedures())
def test_no_arrow_between_steps_runs_up(procedure: Procedure) -> None:
    """In a column every step stands below all steps that lead to it."""
    chart = arranged(chart_of(procedure, {}), "column", 1)
    hints = hints_for(chart, "column")
    pairs = [*hints.straight, *hints.below]
    heads = {head for _, head in pairs}
    assert len(heads) == len(pairs), "two things straight below each other's place"
    reach = {node.id: [head for tail, head in pairs if tail == node.id] for node in chart.nodes}
    assert all(len(below) <= 1 for below in reach.values())


def test_a_check_has_its_ends_on_both_sides() -> None:
    """Of two causes beside the next step, the first answer's stands left, the other's right."""
    rows = hints_for(arranged(chart_of(orchard(), {}), "column", 1), "column").rows
    assert ("cause:coil-shorted", "step:trigger-coil", "cause:coil-open") in rows


def test_a_check_with_two_ends_and_no_next_step_has_a_post_between() -> None:
    """The column goes on straight between the two ends of a finished branch."""
    hints = hints_for(arranged(chart_of(orchard(), {}), "column", 1), "column")
    assert ("cause:seat-switch", "post:step:seat-read", "cause:key-switch") in hints.rows
    assert ("post:step:seat-read", "step:ground-check") in hints.below


def test_passing_arrows_are_those_that_skip_a_step() -> None:
    """An arrow to the next step of the column, or to an end, passes nothing."""
    hints = hints_for(arranged(chart_of(orchard(), {}), "column", 1), "column")
    assert hints.passing == {
        ("step:known-plug", "step:gap-check"),
        ("step:stop-off", "step:ground-check"),
        ("step:coil-secondary", "step:cap-check"),
    }


def test_left_free_the_longest_way_is_straight() -> None:
    """Nothing else is asked of a free chart, and nothing is repeated in it."""
    chart = chart_of(small(), {})
    assert arranged(chart, "free", 0) is chart
    hints = hints_for(chart, "free")
    assert {("start", "step:prime"), ("step:prime", "step:run")} <= hints.straight
    assert (hints.below, hints.rows, hints.passing) == ((), (), frozenset())


def test_a_loop_gets_no_hints() -> None:
    """A faulty procedure with a loop in it does not stop the drawing."""
    nodes = tuple(Node(id=i, kind="process", name=i, paragraphs=()) for i in "ab")
    chart = Chart("c", "t", "s", nodes, (Edge("a", "b"), Edge("b", "a")))
    assert arranged(chart, "column", 1) is chart
    assert hints_for(chart, "column").straight == frozenset()
