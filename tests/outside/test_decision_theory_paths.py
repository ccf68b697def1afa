"""Shortest, longest and all ways through a procedure, against networkx."""

from __future__ import annotations

import networkx as nx
import pytest
from hypothesis import given, settings

from pullcord.analysis.arrivals import read_arrivals
from pullcord.analysis.cost import read_cost
from pullcord.analysis.tree import count_paths, paths_to
from pullcord.graph import procedure_graph, start_node
from pullcord.model.procedure import Procedure
from tests.analysis.making import procedures, read_all


def weighted(procedure: Procedure) -> nx.DiGraph:
    """Return the procedure's graph, each edge as long as the step it leaves takes."""
    graph = procedure_graph(procedure)
    for tail, _, data in graph.edges(data=True):
        data["weight"] = procedure.steps[tail.removeprefix("step:")].minutes
    return graph


@given(procedures(extras=False))
@settings(max_examples=60, deadline=None, print_blob=True)
def test_least_and_worst_minutes_are_shortest_and_longest_ways(procedure: Procedure) -> None:
    """To every outcome: Dijkstra's shortest way, and the longest way of the graph cut to it."""
    tree, table, odds = read_all(procedure)
    graph, start = weighted(procedure), start_node(procedure)
    for found in read_cost(tree, read_arrivals(tree, table, odds)).outcomes:
        assert found.minutes is not None
        shortest = nx.dijkstra_path_length(graph, start, found.outcome)
        assert found.minutes.least == pytest.approx(shortest)
        between = nx.descendants(graph, start) & nx.ancestors(graph, found.outcome)
        cut = graph.subgraph({start, found.outcome, *between})
        assert found.minutes.worst == pytest.approx(nx.dag_longest_path_length(cut))


@given(procedures(extras=False))
@settings(max_examples=60, deadline=None, print_blob=True)
def test_ways_to_every_outcome(procedure: Procedure) -> None:
    """All ways by their steps are networkx's simple paths; none is left out, none made up."""
    tree, _, _ = read_all(procedure)
    graph, start = procedure_graph(procedure), start_node(procedure)
    counts = count_paths(tree)
    for outcome in tree.outcomes:
        ways = paths_to(tree, outcome, most=10_000)
        assert len(ways) == counts[outcome] == len(set(ways))
        steps = {tuple(f"step:{step}" for step, _ in way) for way in ways}
        assert steps == {tuple(path[:-1]) for path in nx.all_simple_paths(graph, start, outcome)}


@given(procedures(extras=False))
@settings(max_examples=60, deadline=None, print_blob=True)
def test_every_walk_ends_and_ends_rightly(procedure: Procedure) -> None:
    """With no `tells`, probability is kept to the end and each outcome is found where it is."""
    tree, table, odds = read_all(procedure)
    arrivals = read_arrivals(tree, table, odds)
    assert sum(arrival.share for arrival in arrivals) == pytest.approx(1)
    assert all(arrival.is_right for arrival in arrivals)


@given(procedures(extras=False))
@settings(max_examples=60, deadline=None, print_blob=True)
def test_steps_on_every_way_are_dominators(procedure: Procedure) -> None:
    """What stands always before a step stands on each of networkx's ways to it."""
    tree, _, _ = read_all(procedure)
    graph, start = procedure_graph(procedure), start_node(procedure)
    for step in tree.order:
        ways = [set(path) for path in nx.all_simple_paths(graph, start, f"step:{step}")]
        on_all = set.intersection(*ways) - {f"step:{step}"} if ways else set()
        assert {f"step:{name}" for name in tree.always_before[step]} == on_all
