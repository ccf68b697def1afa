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
    reach = Reach(order, fits)
    runs = _fewest_connectors(order, reach, _windows(reach, len(order.nodes)))
    return tuple(order.nodes[first:end] for first, end in runs)


class Reach:
    """How far a sheet reaches, by where it begins; asked as seldom as can be.

    A sheet that begins later reaches at least as far, so every answer narrows the next search.
    """

    def __init__(self, order: Order, fits: Fits) -> None:
        """Know nothing yet."""
        self._order = order
        self._fits = fits
        self._known: dict[int, int] = {}

    def end_from(self, first: int) -> int:
        """Return the farthest end of a run from `first` that fits. Raises NoRoomError."""
        if first not in self._known:
            self._known[first] = self._search(first)
        return self._known[first]

    def _search(self, first: int) -> int:
        low = max((end for begin, end in self._known.items() if begin < first), default=0)
        high = min((end for begin, end in self._known.items() if begin > first), default=None)
        low, step = max(low, first), 8
        while high is None or low + step < high:
            end = min(low + step, len(self._order.nodes))
            if not self._is_room(first, end):
                high = end - 1
                break
            low, step = end, step * 2
            if end == len(self._order.nodes):
                return end
        while low < high:
            middle = (low + high + 1) // 2
            low, high = (middle, high) if self._is_room(first, middle) else (low, middle - 1)
        if low == first:
            raise NoRoomError(self._order.nodes[first])
        return low

    def _is_room(self, first: int, end: int) -> bool:
        return self._fits(self._order.nodes[first:end])


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


def _windows(reach: Reach, size: int) -> list[range]:
    """Return where each sheet of a shortest division may begin, and where the last ends."""
    latest = [0]
    while latest[-1] < size:
        latest.append(reach.end_from(latest[-1]))
    earliest = [size]
    for last in reversed(latest[:-1]):
        earliest.insert(0, _earliest_to_reach(reach, earliest[0], last))
    return [range(low, high + 1) for low, high in zip(earliest, latest, strict=True)]


def _earliest_to_reach(reach: Reach, end: int, known: int) -> int:
    """Return the first beginning whose sheet reaches `end`; the one at `known` does."""
    low, high = 0, known
    while low < high:
        middle = (low + high) // 2
        low, high = (low, middle) if reach.end_from(middle) >= end else (middle + 1, high)
    return low


def _fewest_connectors(order: Order, reach: Reach, windows: list[range]) -> list[Run]:
    """Return the runs of the best division, going through every place a sheet may begin."""
    layers: list[dict[int, tuple[int, int]]] = [{0: (0, 0)}]
    for window in windows[1:]:
        layers.append(_one_more_sheet(order, reach, layers[-1], window))
    runs: list[Run] = []
    end = len(order.nodes)
    for layer in reversed(layers[1:]):
        runs.insert(0, (-layer[end][1], end))
        end = -layer[end][1]
    return runs


def _one_more_sheet(
    order: Order, reach: Reach, best: dict[int, tuple[int, int]], window: range
) -> dict[int, tuple[int, int]]:
    """From the cheapest way to each cut, return the cheapest way to each cut one sheet on.

    Of ways that cost the same, the one that fills the earlier sheets more is kept. A cut goes with
    its cost and the cut before it, negative.
    """
    farther: dict[int, tuple[int, int]] = {}
    for first, (cost, _) in best.items():
        for end in range(max(first + 1, window.start), reach.end_from(first) + 1):
            if end in window:
                total = (cost + connectors(order, (first, end)), -first)
                farther[end] = min(farther.get(end, total), total)
    return farther
