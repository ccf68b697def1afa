"""What a flowchart says."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from pullcord.drawing.chart import START, Chart, Node, OtherProcedure, chart_of, one_line
from pullcord.graph import procedure_graph
from pullcord.model.procedure import Procedure
from pullcord.safety.box import Box, SignalWord
from tests.drawing.examples import ORCHARD_BOXES, orchard, small, ugly


def node(chart: Chart, id_: str) -> Node:
    """Return the node with an id."""
    (found,) = (node for node in chart.nodes if node.id == id_)
    return found


@pytest.mark.parametrize("make", [orchard, small, ugly])
def test_shows_the_whole_graph_once(make: Callable[[], Procedure]) -> None:
    """Every node and every arrow of the procedure is there once, with a start before the first."""
    procedure = make()
    graph, chart = procedure_graph(procedure), chart_of(procedure, {})
    assert sorted(node.id for node in chart.nodes) == sorted([START, *graph.nodes])
    first = f"step:{procedure.start}"
    assert sorted((edge.tail, edge.head) for edge in chart.edges) == sorted(
        [(START, first), *graph.edges]
    )


@pytest.mark.parametrize(
    ("id_", "kind", "href"),
    [
        ("start", "start", "#step-prime"),
        ("step:prime", "process", "#step-prime"),
        ("step:run", "decision", "#step-run"),
        ("cause:valve", "cause", "#cause-valve"),
        ("procedure:no-spark", "hand-over", "no-spark.html"),
        ("done", "done", None),
    ],
)
def test_kinds_and_links(id_: str, kind: str, href: str | None) -> None:
    """Each part has its ISO 5807 kind and leads to its own place on the page, or to a page."""
    others = {"no-spark": OtherProcedure("Turns over, no spark", "no-spark.html")}
    found = node(chart_of(small(), {}, others), id_)
    assert (found.kind, found.href) == (kind, href)


def test_answers_that_lead_to_the_same_place_share_an_arrow() -> None:
    """Two answers to one cause are written on one arrow, in the author's order."""
    edges = {(edge.tail, edge.head): edge.answers for edge in chart_of(small(), {}).edges}
    assert edges["step:run", "cause:hose"] == ("water and air", "spits")
    assert edges["step:prime", "step:run"] == ()


def test_an_answer_no_reading_can_be_is_left_out() -> None:
    """It goes from an arrow that has another answer, and stays where it is the only one."""
    never = {"step:run": frozenset({"spits", "nothing"})}
    edges = {
        (edge.tail, edge.head): edge.answers for edge in chart_of(small(), {}, never=never).edges
    }
    assert edges["step:run", "cause:hose"] == ("water and air",)
    assert edges["step:run", "cause:valve"] == ("nothing",)


def test_limits_stand_below_the_question() -> None:
    """What a reading should be is the last thing a step says, and is spoken too."""
    found = node(chart_of(small(), {}, limits={"step:run": "200–300 Ω"}), "step:run")
    assert (found.paragraphs[-1].text, found.paragraphs[-1].role) == ("200–300 Ω", "limits")
    assert found.name == "Check: Run it. What comes out? 200–300 Ω."


def test_the_gravest_signal_word_marks_a_step() -> None:
    """A step with several caution boxes bears the word of the gravest."""
    found = node(chart_of(orchard(), ORCHARD_BOXES), "step:smell")
    assert found.signal is SignalWord.DANGER
    assert found.name == (
        "Check: DANGER. Smell for petrol. "
        "Is there any smell of petrol or a wet spot under the machine?"
    )


def test_a_remedy_bears_its_signal_word_too() -> None:
    """A cause whose remedy is dangerous is marked as a step would be."""
    boxes = {"cause:valve": (Box(SignalWord.WARNING, ("pressure",)),)}
    assert node(chart_of(small(), boxes), "cause:valve").signal is SignalWord.WARNING


def test_a_reading_without_a_question_says_what_is_measured() -> None:
    """The chart says where the probes go when the step asks nothing in words."""
    found = node(chart_of(orchard(), {}), "step:ground-check")
    assert [part.text for part in found.paragraphs] == [
        "Measure the ground of the unit",
        "Resistance, ignition unit body to bare engine metal",
    ]


def test_an_unknown_procedure_is_named_without_a_link() -> None:
    """A hand-over nobody knows the page of still stands in the chart."""
    found = node(chart_of(small(), {}), "procedure:no-spark")
    assert found.href is None
    assert found.paragraphs[-1].text == "no-spark"


def test_a_target_nobody_defined_is_drawn_without_a_link() -> None:
    """A chart of a faulty procedure can be drawn; it links nowhere that is not there."""
    procedure = small(steps={"prime": {"title": "t", "do": "d", "then": "step gone"}})
    assert node(chart_of(procedure, {}), "step:gone").href is None


def test_summary_counts_checks_and_causes() -> None:
    """Whoever does not see the chart hears what it is, how large, and where it begins."""
    summary = chart_of(orchard(), {}).summary
    assert "“Turns over, no spark”: 18 checks lead to 19 causes" in summary
    assert "It begins with: Shut the fuel and air the shed." in summary
    assert "1 check lead to 2 causes" in chart_of(small(), {}).summary


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a\n b\t\u2028c", "a b c"),
        ("bell\x07", "bell\ufffd"),
        ("half \ud800", "half \ufffd"),
        ("Ω – ±", "Ω – ±"),
        ("", ""),
    ],
    ids=["white space", "control", "surrogate", "signs", "nothing"],
)
def test_text_is_kept_to_one_line_a_page_can_hold(text: str, expected: str) -> None:
    """White space is one space; a character no page may hold is shown as missing."""
    assert one_line(text) == expected
