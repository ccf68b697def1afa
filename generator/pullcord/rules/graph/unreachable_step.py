"""Every step can be reached from the start.

A step no answer leads to is never done. Mostly an answer points past it, or it was left behind when
the order was changed.
"""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from pullcord.finding import Flaw
from pullcord.graph import start_node, unreachable_from
from pullcord.model.procedure import Procedure
from pullcord.rules.example import example
from pullcord.rules.ways import meant_by_slips

ID = "unreachable-step"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
  washer:
    title: Hose washer
    do: Unscrew the suction hose and look at its washer.
    ask: Is the washer whole?
    answers:
      whole: done
      torn: cause air-leak
"""
)

MENDED = FAILING.replace("full: cause air-leak\n      not", "full: step washer\n      not")


def check(procedure: Procedure, graph: nx.DiGraph) -> Iterator[Flaw]:
    """Yield a flaw for the first of each group of steps that no way from the start reaches."""
    if procedure.start not in procedure.steps:
        return
    unreached = unreachable_from(graph, start_node(procedure))
    behind_slips = _reached_from(graph, meant_by_slips(graph, "step", procedure.steps))
    lost = [node for node in unreached if node.startswith("step:") and node not in behind_slips]
    for first, behind in _groups(graph, lost):
        name = first.removeprefix("step:")
        also = f", nor to what follows it ({behind} more)" if behind else ""
        yield Flaw(
            ("steps", name),
            f"nothing leads to step `{name}`{also}",
            f"let an answer lead to it (`step {name}`), or delete it",
        )


def _reached_from(graph: nx.DiGraph, names: set[str]) -> set[str]:
    nodes = {f"step:{name}" for name in names}
    return nodes.union(*(nx.descendants(graph, node) for node in nodes))


def _groups(graph: nx.DiGraph, lost: list[str]) -> Iterator[tuple[str, int]]:
    """Yield the first step of each group, and how many more only it leads to."""
    if not lost:
        return
    order = {node: number for number, node in enumerate(lost)}
    inner = graph.subgraph(lost)
    knots = nx.condensation(inner)
    heads = [knot for knot in knots if knots.in_degree(knot) == 0]
    firsts = [min(knots.nodes[knot]["members"], key=order.__getitem__) for knot in heads]
    for first in sorted(firsts, key=order.__getitem__):
        yield first, len(nx.descendants(inner, first) - {first})
