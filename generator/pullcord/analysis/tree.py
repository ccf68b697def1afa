"""A procedure as an analysis sees it: which ways lead where, and what each end can be.

An outcome is an end of the procedure: a cause, a hand-over to another procedure, or `done`. The
last two stand for something else than the causes. Outcomes are named as graph nodes are.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import islice

import networkx as nx

from pullcord.errors import PullcordError
from pullcord.graph import procedure_graph, start_node, ways_out
from pullcord.model.procedure import Procedure


class UnwalkableError(PullcordError):
    """The procedure has no start, goes round in a circle, or leads to something undefined."""


@dataclass(frozen=True)
class Way:
    """One way out of a step."""

    answer: str
    """The answer that takes it; empty when the step asks nothing."""
    to: str
    """The graph node it leads to."""


Path = tuple[tuple[str, str], ...]
"""The steps of one walk, each with the answer given there ("" when it asks nothing)."""


@dataclass(frozen=True)
class Tree:
    """The steps that can be reached, and what can be reached from them."""

    procedure: Procedure
    """What it was read from."""
    order: tuple[str, ...]
    """Step names, each before those it leads to; otherwise in the author's order."""
    ways: Mapping[str, tuple[Way, ...]]
    """The ways out of each step, by its name."""
    outcomes: tuple[str, ...]
    """Ends that can be reached: causes in the author's order, then the others."""
    unreached: tuple[str, ...]
    """Names of causes that no way leads to; they take no part in any figure."""
    ends: Mapping[str, frozenset[str]]
    """By graph node: the outcomes it can still lead to."""
    always_before: Mapping[str, tuple[str, ...]]
    """By step name: the steps that stand on every way from the start to it, in order."""

    def asks(self, step: str) -> bool:
        """Say whether a step is a check."""
        return bool(self.procedure.steps[step].answers)

    @property
    def checks(self) -> tuple[str, ...]:
        """Names of the steps that ask something, in order."""
        return tuple(name for name in self.order if self.asks(name))


def read_tree(procedure: Procedure) -> Tree:
    """Return the procedure's tree; raise UnwalkableError when it cannot be walked to an end."""
    graph = procedure_graph(procedure)
    start = start_node(procedure)
    reached = graph.subgraph({start, *nx.descendants(graph, start)} if start in graph else ())
    _refuse_unwalkable(procedure, reached)
    written = {f"step:{name}": place for place, name in enumerate(procedure.steps)}
    place = {node: written.get(node, len(written)) for node in reached}
    nodes = list(nx.lexicographical_topological_sort(reached, key=place.__getitem__))
    steps = tuple(_name(node) for node in nodes if node in written)
    ways = {
        name: tuple(Way(answer, to.node) for _, answer, to in ways_out(name, procedure.steps[name]))
        for name in steps
    }
    causes = [f"cause:{name}" for name in procedure.causes]
    others = sorted(node for node in reached if node not in written and node not in causes)
    return Tree(
        procedure=procedure,
        order=steps,
        ways=ways,
        outcomes=tuple(node for node in (*causes, *others) if node in reached),
        unreached=tuple(_name(node) for node in causes if node not in reached),
        ends=_ends(reached, nodes),
        always_before=_always_before(reached, start, nodes),
    )


def is_cause(outcome: str) -> bool:
    """Say whether an outcome is one of the procedure's causes, not something else."""
    return outcome.startswith("cause:")


def paths_to(tree: Tree, outcome: str, most: int = 20) -> tuple[Path, ...]:
    """Return the walks that end at an outcome, in the order of the answers, at most `most`."""
    return tuple(islice(_walks(tree, start_node(tree.procedure), outcome), most))


def count_paths(tree: Tree) -> dict[str, int]:
    """Return how many different walks end at each outcome, answers counted apart."""
    counts = dict.fromkeys(tree.ends, 0)
    counts[start_node(tree.procedure)] = 1
    for step in tree.order:
        for way in tree.ways[step]:
            counts[way.to] += counts[f"step:{step}"]
    return {outcome: counts[outcome] for outcome in tree.outcomes}


def _walks(tree: Tree, node: str, outcome: str) -> Iterator[Path]:
    if node == outcome:
        yield ()
    elif outcome in tree.ends[node]:
        step = _name(node)
        for way in tree.ways[step]:
            for rest in _walks(tree, way.to, outcome):
                yield ((step, way.answer), *rest)


def _refuse_unwalkable(procedure: Procedure, reached: nx.DiGraph) -> None:
    if not reached:
        raise UnwalkableError(f"There is no step `{procedure.start}` to start with.")
    if not nx.is_directed_acyclic_graph(reached):
        raise UnwalkableError("The procedure goes round in a circle.")
    known = {f"step:{name}" for name in procedure.steps}
    ends = {f"cause:{name}" for name in procedure.causes}
    for node in sorted(reached):
        kind = node.partition(":")[0]
        if kind in ("step", "cause") and node not in known | ends:
            raise UnwalkableError(f"There is no {kind} `{_name(node)}`.")
        if node in known and not reached.out_degree(node):
            raise UnwalkableError(f"Step `{_name(node)}` leads nowhere.")


def _ends(reached: nx.DiGraph, nodes: list[str]) -> dict[str, frozenset[str]]:
    ends: dict[str, frozenset[str]] = {}
    for node in reversed(nodes):
        onward = [ends[after] for after in reached.successors(node)]
        ends[node] = frozenset[str]().union(*onward) if onward else frozenset({node})
    return ends


def _always_before(reached: nx.DiGraph, start: str, nodes: list[str]) -> dict[str, tuple[str, ...]]:
    """Return, by step, the steps that dominate it."""
    above = nx.immediate_dominators(reached, start)
    found: dict[str, tuple[str, ...]] = {_name(start): ()}
    for node in nodes:
        if node.startswith("step:") and node != start:
            parent = _name(above[node])
            found[_name(node)] = (*found[parent], parent)
    return found


def _name(node: str) -> str:
    return node.partition(":")[2]
