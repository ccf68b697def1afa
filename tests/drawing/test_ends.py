"""Many ends of one check, listed beside the column."""

from __future__ import annotations

from itertools import pairwise

import pytest

from pullcord.drawing.chart import Chart, chart_of
from pullcord.drawing.ends import end_lists, fold, is_end_list
from pullcord.drawing.fit import geometry_of
from pullcord.drawing.geometry import Geometry, PlacedNode
from pullcord.drawing.style import Style
from tests.drawing.examples import labels_on_labels, labels_on_nodes, small, texts_outside

WAYS = ["goes well", "banged", "bogged", "smoked", "got hot and smelt burnt", "died", "raced"]
LISTED = Style(arrangement="column", row_most=2)


def chart(ends: int) -> Chart:
    """Return a check with so many causes of its own and one answer that leads on."""
    causes = {
        f"c{i}": {"title": f"The {word} fault", "remedy": "Mend it."}
        for i, word in enumerate(WAYS[:ends])
    }
    answers = {word: f"cause c{i}" for i, word in enumerate(WAYS[:ends])} | {"fine": "step nuts"}
    steps = {
        "prime": {
            "title": "Run it",
            "do": "Start it.",
            "ask": "What now?",
            "answers": answers,
        },
        "nuts": {"title": "Try every nut", "do": "Try them.", "then": "done"},
    }
    return chart_of(small(steps=steps, causes=causes), {})


def drawn(ends: int) -> Geometry:
    """Return the chart as it is drawn."""
    return geometry_of(chart(ends), LISTED, "built-in")


def causes_of(geometry: Geometry) -> list[PlacedNode]:
    """Return the causes from the top."""
    return [node for node in geometry.nodes if node.kind == "cause"]


@pytest.mark.parametrize(("ends", "lists"), [(1, 0), (2, 0), (3, 1), (7, 1)])
def test_a_check_with_more_ends_than_a_row_holds_gets_a_list(ends: int, lists: int) -> None:
    """Up to two stand beside the column."""
    assert len(end_lists(chart(ends), LISTED)) == lists


def test_a_folded_chart_has_one_node_for_all_ends() -> None:
    """The steps stay; one arrow without answers leads to the box."""
    whole = chart(7)
    folded = fold(whole, end_lists(whole, LISTED))
    assert len(folded.nodes) == len(whole.nodes) - 6
    (edge,) = [edge for edge in folded.edges if is_end_list(edge.head)]
    assert (edge.tail, edge.answers) == ("step:prime", ())


def test_ends_stand_below_one_another_in_the_order_of_the_answers() -> None:
    """Flush left, with room between them."""
    causes = causes_of(drawn(7))
    assert [node.id for node in causes] == [f"cause:c{i}" for i in range(7)]
    lefts = {node.shape.x - node.shape.width / 2 for node in causes}
    assert max(lefts) - min(lefts) < 0.1
    for upper, lower in pairwise(causes):
        gap = lower.shape.y - upper.shape.y - (upper.shape.height + lower.shape.height) / 2
        assert gap > 10


def test_every_branch_ends_at_its_own_symbol() -> None:
    """With its answers, a level head and a line that begins at the check."""
    geometry = drawn(7)
    shapes = {node.id: node.shape for node in geometry.nodes}
    check = shapes["step:prime"]
    branches = {edge.head: edge for edge in geometry.edges if edge.head.startswith("cause:")}
    assert [edge.answers for edge in branches.values()] == [(word,) for word in WAYS]
    for head, edge in branches.items():
        (tip_x, tip_y), left, right = edge.arrow
        assert tip_x == pytest.approx(shapes[head].x - shapes[head].width / 2, abs=0.02)
        assert tip_y == shapes[head].y == pytest.approx((left[1] + right[1]) / 2)
        assert len(edge.curve) % 3 == 1
        assert abs(edge.curve[0][0] - check.x) <= check.width / 2
        assert abs(edge.curve[0][1] - check.y) <= check.height / 2 + 1


def test_nothing_lies_on_anything_else() -> None:
    """Text inside the symbols, answers clear of symbols and of one another."""
    geometry = drawn(7)
    assert texts_outside(geometry) == []
    assert labels_on_nodes(geometry) == []
    assert labels_on_labels(geometry) == []


def test_the_width_does_not_grow_with_the_number_of_ends() -> None:
    """Seven take the room of three."""
    assert drawn(7).width <= drawn(3).width + 80
