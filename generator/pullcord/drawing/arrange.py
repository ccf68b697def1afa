"""Two ways to arrange a chart, as hints for the layout engine.

Free: side branches stand beside the main way. That is the shorter chart, and soon a wide one.
Column: every step has a row of its own and stands below the step before it; what a check ends in
stands left and right of the next step. That fits a tablet held upright, however many branches.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

import networkx as nx

from pullcord.drawing.chart import Chart

Arrangement = Literal["free", "column"]
Pair = tuple[str, str]


@dataclass(frozen=True)
class Hints:
    """What the engine is told beside the chart itself, as pairs of node ids."""

    straight: frozenset[Pair]
    """Arrows to be drawn as short and straight as can be."""
    below: tuple[Pair, ...] = ()
    """Nodes without an arrow between them; the second stands below the first all the same."""
    beside: tuple[Pair, ...] = ()
    """Nodes that share a row, the left one first."""


def hints_for(chart: Chart, arrangement: Arrangement) -> Hints:
    """Return the hints of an arrangement; a chart with a loop in it gets none."""
    graph = nx.DiGraph()
    graph.add_nodes_from(node.id for node in chart.nodes)
    graph.add_edges_from((edge.tail, edge.head) for edge in chart.edges)
    if not nx.is_directed_acyclic_graph(graph):
        return Hints(frozenset())
    if arrangement == "free":
        return Hints(frozenset(_neighbours(nx.dag_longest_path(graph))))
    column = tuple(_neighbours(_column(graph)))
    return Hints(
        straight=frozenset(pair for pair in column if graph.has_edge(*pair)),
        below=tuple(pair for pair in column if not graph.has_edge(*pair)),
        beside=tuple(_left_of(graph, column)),
    )


def _column(graph: nx.DiGraph) -> list[str]:
    """Return the nodes that lead on, each after all that lead to it.

    A short side branch comes before the main way goes on, so that it stays near where it left.
    """
    depth: dict[str, int] = {}
    for node in reversed(list(nx.topological_sort(graph))):
        depth[node] = 1 + max((depth[head] for head in graph.successors(node)), default=0)

    def deepest_first(nodes: Iterable[str]) -> Iterator[str]:
        return iter(sorted(nodes, key=lambda node: -depth[node]))

    finished = list(nx.dfs_postorder_nodes(graph, sort_neighbors=deepest_first))
    return [node for node in reversed(finished) if graph.out_degree(node)]


def _left_of(graph: nx.DiGraph, column: Iterable[Pair]) -> Iterator[Pair]:
    for step, below in column:
        if graph.has_edge(step, below):
            ends = [node for node in graph.successors(step) if _is_own_end(graph, node)]
            yield from ((end, below) for end in ends[: len(ends) // 2])


def _is_own_end(graph: nx.DiGraph, node: str) -> bool:
    return (graph.in_degree(node), graph.out_degree(node)) == (1, 0)


def _neighbours(nodes: list[str]) -> Iterator[Pair]:
    return pairwise(nodes)
