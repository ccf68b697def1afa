"""In which order a page tells its steps and causes, and the numbers a reader finds them by.

Numbers are for eyes and paper and may change with an edit; links use names and do not.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from string import ascii_uppercase

import networkx as nx

from pullcord.graph import procedure_graph, start_node
from pullcord.model.procedure import Procedure


@dataclass(frozen=True)
class Order:
    """The order of one page."""

    steps: tuple[str, ...]
    """Names: every answer leads further down the list."""
    causes: tuple[str, ...]
    """Names, the likeliest first."""
    numbers: Mapping[str, str]
    """`4` for a step, `C` for a cause, by graph node."""


def reading_order(procedure: Procedure) -> Order:
    """Return the order in which each step stands above whatever it leads to.

    Where the procedure leaves it open, the author's own order stands; causes go by their odds.
    """
    steps = tuple(node.removeprefix("step:") for node in _sorted_steps(procedure))
    causes = tuple(sorted(procedure.causes, key=lambda name: -(procedure.causes[name].odds or 0)))
    numbers = {f"step:{name}": str(place) for place, name in enumerate(steps, 1)}
    letters = {f"cause:{name}": letter(place) for place, name in enumerate(causes)}
    return Order(steps, causes, numbers | letters)


def letter(place: int) -> str:
    """Return A for 0, Z for 25, AA for 26, as columns of a sheet are counted."""
    left, right = divmod(place, len(ascii_uppercase))
    return (letter(left - 1) if left else "") + ascii_uppercase[right]


def _sorted_steps(procedure: Procedure) -> list[str]:
    graph = procedure_graph(procedure)
    written = {f"step:{name}": place for place, name in enumerate(procedure.steps)}
    written[start_node(procedure)] = -1
    steps = graph.subgraph(written)
    try:
        return list(nx.lexicographical_topological_sort(steps, key=written.__getitem__))
    except nx.NetworkXUnfeasible:
        return sorted(steps, key=written.__getitem__)
