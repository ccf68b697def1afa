"""Places for the answers of long arrows."""

from __future__ import annotations

from dataclasses import replace

from pullcord.drawing.answer import box_of, settle_answers
from pullcord.drawing.geometry import Geometry, Label, PlacedEdge, PlacedNode, Shape, TextLine
from pullcord.drawing.plane import is_overlapping

LINE = TextLine("yes", 0.0, 5.0, 20.0, 16.0, "regular", "answer")
LABEL = Label(0.0, 0.0, 36.0, 22.0, (LINE,))


def edge(x: float, head: str = "b", label: Label | None = LABEL) -> PlacedEdge:
    """Return an arrow straight down from (x, 50) to (x, 950)."""
    curve = ((x, 50.0), (x, 350.0), (x, 650.0), (x, 940.0))
    return PlacedEdge("a", head, ("yes",), curve, ((x, 950), (x - 4, 940), (x + 4, 940)), label)


def node(id_: str, x: float, y: float, width: float = 80) -> PlacedNode:
    """Return a process of 40 px height."""
    shape = Shape("process", x, y, width, 40.0, ())
    return PlacedNode(id_, "process", id_, None, None, shape)


def geometry(*edges: PlacedEdge, nodes: tuple[PlacedNode, ...] = ()) -> Geometry:
    """Return a chart of 400 by 1000 px between a and b."""
    ends = (node("a", 100, 30), node("b", 100, 970))
    return Geometry("c", "t", "s", 400.0, 1000.0, (*ends, *nodes), edges)


def label_after(chart: Geometry, *loose: tuple[str, str]) -> Label:
    """Return the first arrow's label once the answers are settled."""
    settled = settle_answers(chart, frozenset(loose))
    assert settled.homeless == frozenset()
    label = settled.geometry.edges[0].label
    assert label is not None
    return label


def test_a_far_answer_comes_to_its_question() -> None:
    """It moves from half way down to just below the check, beside its arrow, with its line."""
    far = replace(LABEL, x=130.0, y=500.0, lines=(replace(LINE, x=130.0, y=505.0),))
    label = label_after(geometry(edge(100, label=far)))
    assert 50 < label.y < 90
    assert label.x == 119
    assert (label.lines[0].x, label.lines[0].y) == (label.x, label.y + 5)


def test_a_near_answer_stays() -> None:
    """What stands well is left alone."""
    near = replace(LABEL, x=130.0, y=80.0)
    assert label_after(geometry(edge(100, label=near))) == near


def test_an_answer_that_another_arrow_crosses_moves() -> None:
    """A line through the words is worse than a place on the other side."""
    crossed = replace(LABEL, x=125.0, y=80.0)
    label = label_after(geometry(edge(100, label=crossed), edge(125, "c", None)))
    assert not box_of(label).left < 125 < box_of(label).right


def test_a_loose_answer_keeps_off_symbols_and_answers() -> None:
    """It goes on along its arrow until nothing is in the way."""
    wall = node("wall", 100, 120, 300)
    other = replace(LABEL, x=119.0, y=160.0)
    chart = geometry(edge(100), edge(300, "c", other), nodes=(wall,))
    label = label_after(chart, ("a", "b"))
    assert label.y - label.height / 2 >= 140 or label.y + label.height / 2 <= 100
    assert not is_overlapping(box_of(label), box_of(other))


def test_without_a_free_place_an_arrow_is_named() -> None:
    """Whoever asked can have room made; nothing is put where it cannot be read."""
    wall = Shape("process", 200.0, 300.0, 400.0, 600.0, ())
    blocked = replace(node("wall", 0, 0), shape=wall)
    settled = settle_answers(geometry(edge(100), nodes=(blocked,)), frozenset({("a", "b")}))
    assert settled.homeless == {("a", "b")}


def test_a_loose_arrow_without_answers_needs_no_place() -> None:
    """Nothing is looked for when there is nothing to say."""
    settled = settle_answers(geometry(edge(100, label=None)), frozenset({("a", "b")}))
    assert settled.homeless == frozenset()
