"""Letters of connectors, and arrows that run down beside rows."""

from __future__ import annotations

import networkx as nx
import pytest

from pullcord.drawing.chart import START
from pullcord.printing.chart.joints import join, letter
from pullcord.printing.chart.rows import rows_of
from pullcord.printing.chart.strips import StripSheet
from tests.printing.chart.charts import chart_from

EDGES = [(START, "a"), ("a", "b"), ("b", "c"), ("c", "d"), ("d", "e"), ("e", "x"), ("a", "d")]


@pytest.mark.parametrize(
    ("number", "said"),
    [(0, "A"), (7, "H"), (8, "J"), (13, "P"), (23, "Z"), (24, "AA"), (48, "BA")],
)
def test_letters_leave_out_those_that_look_like_figures(number: int, said: str) -> None:
    """I and O are not used."""
    assert letter(number) == said


def test_a_way_within_a_strip_is_drawn() -> None:
    """It needs no connector."""
    rows = rows_of(chart_from(nx.DiGraph(EDGES))).rows
    joints = join(rows, [StripSheet(((0, len(rows)),))])
    assert joints.letters == {}
    assert joints.lanes == {(1, 4): 0}


def test_a_way_between_strips_gets_a_letter() -> None:
    """On one sheet the letter is enough; between sheets it says from which it comes."""
    rows = rows_of(chart_from(nx.DiGraph(EDGES))).rows
    beside = join(rows, [StripSheet(((0, 3), (3, len(rows))))])
    assert beside.letters == {4: "A", 3: "B"}
    assert beside.sources == {4: (), 3: ()}
    apart = join(rows, [StripSheet(((0, 3),)), StripSheet(((3, len(rows)),))])
    assert apart.letters == {4: "A", 3: "B"}
    assert apart.sources == {4: (1,), 3: (1,)}
    assert list(apart.sheets) == [1, 1, 1, 2, 2, 2]


def test_lanes_are_shared_only_by_ways_to_the_same_step() -> None:
    """Arrows past the same rows keep apart; a third finds no lane and gets a letter."""
    chain = [(START, "n0"), *((f"n{at}", f"n{at + 1}") for at in range(9)), ("n9", "x")]
    past = [("n0", "n6"), ("n1", "n7"), ("n2", "n8"), ("n3", "n6")]
    rows = rows_of(chart_from(nx.DiGraph([*chain, *past]))).rows
    joints = join(rows, [StripSheet(((0, len(rows)),))])
    assert joints.lanes[1, 7] == joints.lanes[4, 7]
    assert len(set(joints.lanes.values())) == 2
    assert len(joints.letters) == 1
