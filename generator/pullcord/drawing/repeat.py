"""Show an end again where another check far away leads to it, rather than draw a line to it.

An end is a cause, a hand-over or `done`: nothing leads on from it. Two checks that stand close
together share one; a check further down gets its own copy, with the same text and the same link.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from pullcord.drawing.chart import Chart, Edge, Node

_COPY = "#"
"""In no name and in no kind of node."""


def repeat_far_ends(chart: Chart, column: Sequence[str], reach: int) -> Chart:
    """Return the chart with copies of ends; every step and every arrow stays single.

    `column` lists the steps from the top down; steps no more than `reach` places apart share an
    end. A copy's id is the node's with `#2`, `#3`, ...
    """
    place = {node: number for number, node in enumerate(column)}
    copies: dict[tuple[str, str], str] = {}
    for node in chart.nodes:
        tails = [edge.tail for edge in chart.edges if edge.head == node.id]
        if node.id not in place and all(tail in place for tail in tails):
            copies |= dict(_copies(node.id, tails, place, reach))
    return replace(
        chart,
        nodes=tuple(copy for node in chart.nodes for copy in _repeated(node, copies)),
        edges=tuple(_redirected(edge, copies) for edge in chart.edges),
    )


def original(id_: str) -> str:
    """Return the id of the node that a node is a copy of; its own when it is none."""
    return id_.partition(_COPY)[0]


def _copies(
    end: str, tails: Sequence[str], place: Mapping[str, int], reach: int
) -> Iterator[tuple[tuple[str, str], str]]:
    number, last = 1, None
    for tail in sorted(tails, key=place.__getitem__):
        if last is not None and place[tail] - last > reach:
            number += 1
        last = place[tail]
        yield (tail, end), end if number == 1 else f"{end}{_COPY}{number}"


def _repeated(node: Node, copies: Mapping[tuple[str, str], str]) -> Iterator[Node]:
    names = dict.fromkeys(copy for (_, end), copy in copies.items() if end == node.id)
    yield from (replace(node, id=name) for name in names or (node.id,))


def _redirected(edge: Edge, copies: Mapping[tuple[str, str], str]) -> Edge:
    return replace(edge, head=copies.get((edge.tail, edge.head), edge.head))
