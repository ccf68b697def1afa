"""A chart as rows: what stands below, what beside."""

from __future__ import annotations

import networkx as nx

from pullcord.drawing.chart import START
from pullcord.printing.chart.rows import Row, rows_of
from tests.printing.chart.charts import chart_from


def rows(*edges: tuple[str, str], wanted: tuple[str, ...] = ()) -> list[Row]:
    """Return the rows of a chart with these arrows."""
    return list(rows_of(chart_from(nx.DiGraph(edges)), wanted).rows)


def outline(found: list[Row]) -> list[tuple[str, str, list[str]]]:
    """Return each row's node, what stands below it, and what its ways beside it lead to."""
    return [
        (
            row.node.id,
            row.down.head if row.down else "",
            [aside.edge.head for aside in row.asides],
        )
        for row in found
    ]


def test_an_end_stands_beside_each_check_that_leads_to_it() -> None:
    """No arrow runs far for a cause: it is shown again."""
    found = rows((START, "a"), ("a", "bad"), ("a", "b"), ("b", "bad"), ("b", "good"))
    assert outline(found) == [
        (START, "a", []),
        ("a", "b", ["bad"]),
        ("b", "", ["bad", "good"]),
    ]


def test_a_way_past_a_step_leaves_beside() -> None:
    """Only one way can lead straight down; the row it passes to is joined."""
    found = rows((START, "a"), ("a", "b"), ("a", "c"), ("b", "c"), ("c", "end"))
    assert outline(found) == [
        (START, "a", []),
        ("a", "b", ["c"]),
        ("b", "c", []),
        ("c", "", ["end"]),
    ]
    assert [row.node.id for row in found if row.is_joined] == ["c"]


def test_the_numbers_order_wins_a_tie() -> None:
    """Two branches may be read either way round: then the order of other sheets is taken."""
    edges = (START, "a"), ("a", "b"), ("a", "c"), ("b", "x"), ("c", "y")
    assert [row.node.id for row in rows(*edges, wanted=("a", "c", "b"))] == [START, "a", "c", "b"]
    assert [row.node.id for row in rows(*edges, wanted=("a", "b", "c"))] == [START, "a", "b", "c"]


def test_an_order_against_the_arrows_is_not_taken() -> None:
    """No arrow leads back up."""
    edges = (START, "a"), ("a", "b"), ("b", "x")
    assert [row.node.id for row in rows(*edges, wanted=("b", "a"))] == [START, "a", "b"]
