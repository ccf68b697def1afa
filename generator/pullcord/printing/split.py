"""Dividing a chart that is too large for one sheet.

Nodes are taken in a reading order that keeps what hangs together in a run: depth first, each node
only after everything that leads to it. Sheets are consecutive runs of that order. Among all such
divisions whose sheets fit, the one with the fewest sheets is chosen, and among those the one with
the fewest connectors: that is the bound. A division that is not made of runs may need fewer.

Whether a run fits is asked of the caller. It is taken to be monotone: part of a run that fits
fits too.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache

import networkx as nx

from pullcord.errors import PullcordError

Run = tuple[int, int]
"""A consecutive part of the order: its first position, and the position after its last."""

Fits = Callable[[tuple[str, ...]], bool]
"""Says whether the nodes can be drawn on one sheet."""


@dataclass(frozen=True)
class Order:
    """The nodes as they are read, and for each the earliest position an arrow reaches it from."""

    nodes: tuple[str, ...]
    earliest_tail: tuple[int, ...]
    """A node nothing leads to holds its own position."""


class NoRoomError(PullcordError):
    """A single node does not fit a sheet of its own."""

    def __init__(self, node: str) -> None:
        """Keep the node for whoever can name it to the author."""
        super().__init__(f"{node} does not fit a sheet")
        self.node = node


def reading_order(graph: nx.DiGraph, start: str) -> Order:
    """Return the order for an acyclic graph; nodes the start does not reach come last."""
    nodes = [*_depth_first(graph, start)]
    nodes += [node for node in nx.topological_sort(graph) if node not in set(nodes)]
    place = {node: position for position, node in enumerate(nodes)}
    earliest = (min((place[t] for t in graph.predecessors(n)), default=place[n]) for n in nodes)
    return Order(tuple(nodes), tuple(earliest))


def connectors(order: Order, run: Run) -> int:
    """Return how many nodes of the run are reached from an earlier sheet."""
    first, end = run
    return sum(1 for tail in order.earliest_tail[first:end] if tail < first)


def split_order(order: Order, fits: Fits) -> tuple[tuple[str, ...], ...]:
    """Return the nodes of each sheet. Raises NoRoomError when one node alone does not fit."""
    runs = _fewest_connectors(order, _reach(order, fits))
    return tuple(order.nodes[first:end] for first, end in runs)


def _depth_first(graph: nx.DiGraph, start: str) -> Sequence[str]:
    """Return what the start reaches, each node as late as its last way in allows."""
    finished = list(nx.dfs_postorder_nodes(_last_child_first(graph), start))
    return finished[::-1]


def _last_child_first(graph: nx.DiGraph) -> nx.DiGraph:
    """Return the graph with each node's ways reversed, so that the first is read first."""
    turned = nx.DiGraph()
    turned.add_nodes_from(graph.nodes)
    for node in graph.nodes:
        turned.add_edges_from((node, head) for head in reversed(list(graph.successors(node))))
    return turned


def _reach(order: Order, fits: Fits) -> Callable[[int], int]:
    """Return a function from a run's first position to the farthest end that still fits."""

    @cache
    def reach(first: int) -> int:
        known, step = first, 1
        while known < len(order.nodes) and fits(
            order.nodes[first : min(known + step, len(order.nodes))]
        ):
            known, step = min(known + step, len(order.nodes)), step * 2
        low, high = known, min(known + step, len(order.nodes))
        while low + 1 < high:
            middle = (low + high) // 2
            low, high = (middle, high) if fits(order.nodes[first:middle]) else (low, middle)
        if low == first:
            raise NoRoomError(order.nodes[first])
        return low

    return reach


def _fewest_connectors(order: Order, reach: Callable[[int], int]) -> list[Run]:
    """Return the runs of the best division, by going through every useful place to cut."""
    best: dict[int, tuple[int, int]] = {0: (0, -1)}
    layers = [best]
    while len(order.nodes) not in best:
        best = _one_more_sheet(order, reach, best)
        layers.append(best)
    runs: list[Run] = []
    end = len(order.nodes)
    for layer in reversed(layers[1:]):
        first = layer[end][1]
        runs.insert(0, (first, end))
        end = first
    return runs


def _one_more_sheet(
    order: Order, reach: Callable[[int], int], best: dict[int, tuple[int, int]]
) -> dict[int, tuple[int, int]]:
    """From the cheapest way to each cut, return the cheapest way to each cut one sheet on."""
    farther: dict[int, tuple[int, int]] = {}
    for first, (cost, _) in best.items():
        for end in range(first + 1, reach(first) + 1):
            total = (cost + connectors(order, (first, end)), first)
            farther[end] = min(farther.get(end, total), total)
    return farther
