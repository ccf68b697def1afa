"""A chart too large for a sheet is divided without losing anything, at the fewest connectors."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, pairwise

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.printing.chart.split import NoRoomError, Order, connectors, reading_order, split_order


@st.composite
def charts(draw: st.DrawFn, most: int = 9) -> nx.DiGraph:
    """Return a small acyclic graph in which node 0 leads, directly or not, to every other."""
    size = draw(st.integers(1, most))
    graph = nx.DiGraph()
    graph.add_node("0")
    for head in range(1, size):
        for tail in draw(st.sets(st.integers(0, head - 1), min_size=1, max_size=3)):
            graph.add_edge(str(tail), str(head))
    return graph


def every_division(order: Order) -> Iterator[list[tuple[int, int]]]:
    """Yield every way to cut the order into runs."""
    size = len(order.nodes)
    for count in range(size):
        for cuts in combinations(range(1, size), count):
            edges = [0, *cuts, size]
            yield list(pairwise(edges))


@settings(max_examples=60, deadline=None, print_blob=True)
@given(charts(), st.integers(1, 5))
def test_no_division_into_runs_is_better(graph: nx.DiGraph, most: int) -> None:
    """The division has the fewest sheets, then the fewest connectors, of all that fit."""
    order = reading_order(graph, "0")
    sheets = split_order(order, lambda nodes: len(nodes) <= most)
    costs = [
        (len(runs), sum(connectors(order, run) for run in runs))
        for runs in every_division(order)
        if all(end - first <= most for first, end in runs)
    ]
    place = {node: position for position, node in enumerate(order.nodes)}
    runs = [(place[sheet[0]], place[sheet[-1]] + 1) for sheet in sheets]
    assert (len(runs), sum(connectors(order, run) for run in runs)) == min(costs)


@settings(max_examples=60, deadline=None, print_blob=True)
@given(charts(most=40), st.integers(1, 12))
def test_nothing_is_lost_and_all_reads_forward(graph: nx.DiGraph, most: int) -> None:
    """Every node stands on exactly one sheet, and no arrow leads back to an earlier sheet."""
    sheets = split_order(reading_order(graph, "0"), lambda nodes: len(nodes) <= most)
    sheet_of = {node: number for number, sheet in enumerate(sheets) for node in sheet}
    assert sorted(sheet_of) == sorted(graph.nodes)
    assert sum(map(len, sheets)) == len(graph)
    assert all(sheet_of[tail] <= sheet_of[head] for tail, head in graph.edges)


def test_subtrees_stay_together() -> None:
    """Two branches of a check go to a sheet each, not half and half."""
    graph = nx.DiGraph([("0", "a"), ("0", "b"), ("a", "a1"), ("a", "a2"), ("b", "b1"), ("b", "b2")])
    sheets = split_order(reading_order(graph, "0"), lambda nodes: len(nodes) <= 4)
    assert sheets == (("0", "a", "a1", "a2"), ("b", "b1", "b2"))


def test_a_node_that_fits_nowhere_is_named() -> None:
    """The caller learns which node is too large for any sheet."""
    with pytest.raises(NoRoomError) as caught:
        split_order(reading_order(nx.DiGraph([("0", "a")]), "0"), lambda nodes: "a" not in nodes)
    assert caught.value.node == "a"
