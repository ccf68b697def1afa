"""How long a procedure may take, from what its steps say."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

import networkx as nx

from pullcord.graph import procedure_graph, start_node
from pullcord.model.procedure import Procedure
from pullcord.safety.flow import Same

MINUTES_AN_HOUR = 60


def minutes_to_an_end(procedure: Procedure) -> tuple[float, float]:
    """Return the minutes of the shortest and of the longest way from the start to any end.

    An end is a cause, another procedure or `done`; remedies are not counted. Raises
    networkx.NetworkXUnfeasible when the procedure goes round in a circle.
    """
    return _to_an_end(Same((procedure,)))


@lru_cache(maxsize=1024)  # Pages, papers and every list say it.
def _to_an_end(key: Same) -> tuple[float, float]:
    (procedure,) = key.parts
    graph = procedure_graph(procedure)
    start = start_node(procedure)
    reached = graph.subgraph({start, *nx.descendants(graph, start)})
    least = {start: _minutes(procedure, start)}
    most = dict(least)
    for node in nx.topological_sort(reached):
        for following in reached.successors(node):
            own = _minutes(procedure, following)
            least[following] = min(least.get(following, float("inf")), least[node] + own)
            most[following] = max(most.get(following, 0.0), most[node] + own)
    ends = [node for node in reached if reached.out_degree(node) == 0]
    return min(least[end] for end in ends), max(most[end] for end in ends)


def say_minutes(words: Mapping[str, str], minutes: float) -> str:
    """Return a time as a person says it: `5 min`, `1 h`, `1 h 20 min`."""
    hours, rest = divmod(round(minutes), MINUTES_AN_HOUR)
    if minutes < 1:
        return words["under_a_minute"]
    if not hours:
        return words["minutes"].format(minutes=rest)
    if not rest:
        return words["hours"].format(hours=hours)
    return words["hours_minutes"].format(hours=hours, minutes=rest)


def _minutes(procedure: Procedure, node: str) -> float:
    kind, _, name = node.partition(":")
    return procedure.steps[name].minutes if kind == "step" and name in procedure.steps else 0.0
