"""A flowchart as rows: a step in each, the next step below it, everything else beside it.

An end (a cause, a hand-over, `done`) stands beside every check that leads to it, so no arrow runs
far for it. A way to a step that is not the next one leaves beside the step as well.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import networkx as nx

from pullcord.drawing.chart import START, Chart, Edge, Node
from pullcord.printing.chart.split import Order, reading_order


@dataclass(frozen=True)
class Aside:
    """One way that leads off beside a step."""

    edge: Edge
    end: Node | None
    """What stands at its tip; None when it leads to a step in another row."""


@dataclass(frozen=True)
class Row:
    """A step, and the ways it leads."""

    node: Node
    down: Edge | None
    """The way to the next row, if there is one."""
    asides: tuple[Aside, ...]
    """In the author's order."""
    is_joined: bool
    """Whether a row that is not the one above leads here."""


@dataclass(frozen=True)
class Rows:
    """A whole chart in rows, in the order they are read."""

    rows: tuple[Row, ...]
    order: Order
    """The rows' nodes, for dividing them."""


def rows_of(chart: Chart, wanted: Sequence[str] = ()) -> Rows:
    """Return the rows of an acyclic chart.

    `wanted` lists nodes in the order in which other sheets number them; it is kept when it lets as
    many arrows lead straight down as the order of a depth-first walk would.
    """
    graph = chart_graph(chart)
    ends = {node for node in graph if is_end(graph, node)}
    steps = graph.subgraph([node for node in graph if node not in ends]).copy()
    walked = reading_order(steps, START)
    told = _told(steps, wanted)
    order = told if told and _straight(steps, told) >= _straight(steps, walked) else walked
    return Rows(tuple(_rows(chart, order.nodes, ends)), order)


def chart_graph(chart: Chart) -> nx.DiGraph:
    """Return the chart's nodes and arrows as a graph of node ids."""
    graph = nx.DiGraph()
    graph.add_nodes_from(node.id for node in chart.nodes)
    graph.add_edges_from((edge.tail, edge.head) for edge in chart.edges)
    return graph


def is_end(graph: nx.DiGraph, node: str) -> bool:
    """Say whether nothing leads on from a node that something leads to."""
    return not graph.succ[node] and bool(graph.pred[node])


def _told(steps: nx.DiGraph, wanted: Sequence[str]) -> Order | None:
    """Return the wanted order, if it lists every step once and each after all that lead to it."""
    nodes = (START, *(node for node in wanted if node != START))
    place = {node: position for position, node in enumerate(nodes)}
    if len(place) != len(nodes) or set(place) != set(steps):
        return None
    if any(place[tail] > place[head] for tail, head in steps.edges):
        return None
    earliest = (min((place[t] for t in steps.predecessors(n)), default=place[n]) for n in nodes)
    return Order(nodes, tuple(earliest))


def _straight(steps: nx.DiGraph, order: Order) -> int:
    return sum(1 for pair in pairwise(order.nodes) if steps.has_edge(*pair))


def _rows(chart: Chart, order: Sequence[str], ends: set[str]) -> list[Row]:
    nodes = {node.id: node for node in chart.nodes}
    ways: dict[str, list[Edge]] = {node: [] for node in order}
    for edge in chart.edges:
        ways[edge.tail].append(edge)
    below = dict(pairwise(order))
    joined = {
        edge.head
        for edges in ways.values()
        for edge in edges
        if edge.head not in ends and below.get(edge.tail) != edge.head
    }
    return [
        Row(
            node=nodes[name],
            down=next((edge for edge in ways[name] if edge.head == below.get(name)), None),
            asides=tuple(
                Aside(edge, nodes[edge.head] if edge.head in ends else None)
                for edge in ways[name]
                if edge.head != below.get(name)
            ),
            is_joined=name in joined,
        )
        for name in order
    ]
