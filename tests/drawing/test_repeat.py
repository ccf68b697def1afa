"""Ends shown again where another check leads to them."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings

from pullcord.drawing.arrange import arranged
from pullcord.drawing.chart import Chart, Edge, Node, Paragraph, chart_of
from pullcord.drawing.repeat import repeat_far_ends
from pullcord.model.procedure import Procedure
from tests.drawing.random_procedures import procedures


def ladder(*tails: str) -> Chart:
    """Return a chart of steps a to e in a row, some of which also lead to `end`."""
    ids = [*"abcde", "end"]
    nodes = tuple(
        Node(id=i, kind="process", name=i, paragraphs=(Paragraph(i, "title"),)) for i in ids
    )
    row = [Edge(tail, head) for tail, head in zip("abcd", "bcde", strict=True)]
    return Chart("ladder", "t", "s", nodes, (*row, *(Edge(tail, "end", ("no",)) for tail in tails)))


def heads(chart: Chart) -> dict[str, str]:
    """Return which copy of the end each step leads to."""
    return {edge.tail: edge.head for edge in chart.edges if edge.head.startswith("end")}


def test_neighbours_share_an_end() -> None:
    """Steps within reach of one another lead to the same symbol."""
    assert heads(repeat_far_ends(ladder("a", "b"), "abcde", 1)) == {"a": "end", "b": "end"}


def test_far_steps_get_a_copy() -> None:
    """A step out of reach gets its own symbol, with the same text and link."""
    chart = repeat_far_ends(ladder("a", "b", "e"), "abcde", 1)
    assert heads(chart) == {"a": "end", "b": "end", "e": "end#2"}
    first, second = (node for node in chart.nodes if node.id.startswith("end"))
    assert (first.paragraphs, first.href, first.kind) == (
        second.paragraphs,
        second.href,
        second.kind,
    )


def test_without_reach_every_step_has_its_own_end() -> None:
    """Reach 0 leaves no end with two arrows."""
    chart = repeat_far_ends(ladder("c", "a", "b"), "abcde", 0)
    assert heads(chart) == {"a": "end", "b": "end#2", "c": "end#3"}


def test_an_end_nobody_leads_to_stays() -> None:
    """A cause that is never reached is still drawn, once."""
    assert [n.id for n in repeat_far_ends(ladder(), "abcde", 1).nodes if n.id == "end"] == ["end"]


@settings(max_examples=60, deadline=None, print_blob=True)
@given(procedure=procedures())
def test_steps_and_arrows_stay_single(procedure: Procedure) -> None:
    """Only ends are repeated: steps are there once, and each arrow with its answers once."""
    before = chart_of(procedure, {})
    after = arranged(before, "column", 0)
    steps = Counter(node.id for node in after.nodes if node.kind in {"process", "decision"})
    assert steps == Counter(n.id for n in before.nodes if n.kind in {"process", "decision"})
    arrows = Counter((e.tail, e.head.split("#")[0], e.answers) for e in after.edges)
    assert arrows == Counter((e.tail, e.head, e.answers) for e in before.edges)
    assert {node.id.split("#")[0] for node in after.nodes} == {node.id for node in before.nodes}
