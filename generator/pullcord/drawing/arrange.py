"""Two ways to arrange a chart, as hints for the layout engine.

Free: side branches stand beside the main way. That is the shorter chart, and soon a wide one.
Column: every step has a row of its own and stands below the step before it; what a check ends in
stands left and right of the next step. That fits a tablet held upright, however many branches.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise, zip_longest

import networkx as nx

from pullcord.drawing.chart import Chart
from pullcord.drawing.ends import is_end_list
from pullcord.drawing.repeat import repeat_far_ends
from pullcord.drawing.style import Arrangement

Pair = tuple[str, str]


@dataclass(frozen=True)
class Hints:
    """What the engine is told beside the chart itself, as pairs of node ids."""

    straight: frozenset[Pair]
    """Arrows to be drawn as short and straight as can be."""
    posts: tuple[str, ...] = ()
    """Points nobody sees: they hold the column straight between two ends of a check."""
    below: tuple[Pair, ...] = ()
    """Nodes without an arrow between them; the second stands below the first all the same."""
    rows: tuple[tuple[str, ...], ...] = ()
    """Nodes that share a row, from the left."""
    passing: frozenset[Pair] = frozenset()
    """Arrows that run past steps they do not touch."""


def arranged(chart: Chart, arrangement: Arrangement, reach: int) -> Chart:
    """Return the chart as it is drawn in an arrangement: in a column, with far ends repeated.

    `reach` says how many steps apart two checks may stand that share an end.
    """
    graph = _graph(chart)
    if arrangement == "free" or not nx.is_directed_acyclic_graph(graph):
        return chart
    return repeat_far_ends(chart, _column(graph), reach)


def hints_for(chart: Chart, arrangement: Arrangement) -> Hints:
    """Return the hints for an arranged chart; one with a loop in it gets none."""
    graph = _graph(chart)
    if not nx.is_directed_acyclic_graph(graph):
        return Hints(frozenset())
    if arrangement == "free":
        return Hints(frozenset(pairwise(nx.dag_longest_path(graph))))
    order = _column(graph)
    rows = [_row(graph, step, below) for step, below in zip_longest(order, order[1:])]
    column = tuple(pair for row in rows for pair in pairwise(row.column))
    return Hints(
        straight=frozenset(pair for pair in column if graph.has_edge(*pair)),
        posts=tuple(node for row in rows for node in row.column if node not in graph),
        below=tuple(pair for pair in column if not graph.has_edge(*pair)),
        rows=tuple(row.nodes for row in rows if row.nodes),
        passing=frozenset(pair for pair in graph.edges if _is_passing(pair, order)),
    )


def _graph(chart: Chart) -> nx.DiGraph:
    graph = nx.DiGraph()
    graph.add_nodes_from(node.id for node in chart.nodes)
    graph.add_edges_from((edge.tail, edge.head) for edge in chart.edges)
    return graph


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


def _is_passing(pair: Pair, order: list[str]) -> bool:
    tail, head = pair
    return head in order and order.index(head) - order.index(tail) > 1


@dataclass(frozen=True)
class _Row:
    column: tuple[str, ...]
    """A step and what stands straight below it, down to the next step."""
    nodes: tuple[str, ...]
    """What shares the row below the step, from the left."""


def _row(graph: nx.DiGraph, step: str, below: str | None) -> _Row:
    """Return the row below a step: half of its ends left of the column, half right of it."""
    ends = [node for node in graph.successors(step) if _is_own_end(graph, node)]
    half = len(ends) // 2
    last = () if below is None else (below,)
    if below is not None and graph.has_edge(step, below):
        if any(map(is_end_list, ends)):
            return _Row((step, below), (below, *ends))
        if len(ends) == 1 and graph.out_degree(step) > 2:
            # On the side of what passes it would stand beyond that, far out.
            return _Row((step, below), (*ends, below))
        # A single end may else stand on either side, wherever there is more room.
        return _Row((step, below), (*ends[:half], below, *ends[half:]) if half else ())
    if not ends:
        return _Row((step, *last), ())
    if len(ends) % 2 and not is_end_list(ends[half]):
        return _Row((step, ends[half], *last), tuple(ends))
    post = f"post:{step}"
    return _Row((step, post, *last), (*ends[:half], post, *ends[half:]))


def _is_own_end(graph: nx.DiGraph, node: str) -> bool:
    return (graph.in_degree(node), graph.out_degree(node)) == (1, 0)
