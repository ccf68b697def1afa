"""What changed about the ways: which ends can be reached, and after how many checks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import networkx as nx

from pullcord.analysis.diff.change import Change, Part, changed
from pullcord.graph import procedure_graph, start_node
from pullcord.model.procedure import Procedure

_PATHS = Part.PATHS


def compare_paths(old: Procedure, new: Procedure) -> Iterator[Change]:
    """Yield every end and step that is reached no more or newly, and ways that got shorter.

    `old` has its new names already. A way's length is the checks on it, the fewest that will do.
    """
    before, after = fewest_checks(old), fewest_checks(new)
    for node in (*after, *(node for node in before if node not in after)):
        if _is_told(node, old, new):
            was, now = before.get(node), after.get(node)
            if was is None or now is None:
                what = "reached" if was is None else "unreached"
                yield Change(_PATHS, node, what, _checks(was), _checks(now))
            else:
                yield from changed(_PATHS, node, "fewest-checks", _checks(was), _checks(now))


def fewest_checks(procedure: Procedure) -> Mapping[str, int]:
    """Return how many checks the shortest way takes to every node that can be reached."""
    graph, start = procedure_graph(procedure), start_node(procedure)
    if start not in graph:
        return {}
    asking = {f"step:{name}" for name, step in procedure.steps.items() if step.answers}

    def weight(tail: str, head: str, given: object) -> int:
        return int(tail in asking)

    lengths = nx.single_source_dijkstra_path_length(graph, start, weight=weight)
    return {node: int(lengths[node]) for node in graph if node in lengths}


def _is_told(node: str, old: Procedure, new: Procedure) -> bool:
    """Whether an end or a step that stands in both; of a new step its being there says enough."""
    kind, _, name = node.partition(":")
    return kind != "step" or (name in old.steps) == (name in new.steps)


def _checks(number: int | None) -> str:
    return "" if number is None else str(number)
