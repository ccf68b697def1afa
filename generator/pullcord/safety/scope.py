"""Several procedures joined at their hand-overs, as one graph to follow the state through.

A node is `PROCEDURE/NODE`, NODE being the procedure's own graph node, such as `no-spark/step:plug`.
A hand-over leads on to the other procedure's first step. Targets nobody defined lead nowhere, and
loops are cut: other rules report both.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import networkx as nx

from pullcord.graph import add_procedure, handovers_of, leads_on, library_graph, start_node
from pullcord.model.action import Action
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.effects import Effects, effects_of
from pullcord.safety.vocabulary import AT_START, State

NOTHING = Effects()


@dataclass(frozen=True)
class Scope:
    """What is analysed together."""

    graph: nx.DiGraph
    """Acyclic. Edges carry `answers`, as in `pullcord.graph`."""
    effects: Mapping[str, Effects]
    """Of every node."""
    actions: Mapping[str, Action]
    """The step or cause behind a node, for the nodes that have one."""
    starts: tuple[str, ...]
    """Nodes where someone may begin with a machine of unknown history."""
    order: tuple[str, ...]
    """All nodes, each before those it leads to."""
    fresh: State = AT_START
    """What holds there."""


def node_in(procedure: Procedure, node: str) -> str:
    """Return a procedure's own node as a node of a scope."""
    return f"{procedure.procedure}/{node}"


def own_nodes(procedure: Procedure) -> tuple[str, ...]:
    """Return the procedure's own graph nodes that say something: its steps, then its causes."""
    steps = (f"step:{name}" for name in procedure.steps)
    return (*steps, *(f"cause:{name}" for name in procedure.causes))


def parts_of(node: str) -> tuple[str, str, str]:
    """Return procedure, kind and name of a scope's node; `done` has no name."""
    procedure, _, rest = node.partition("/")
    kind, _, name = rest.partition(":")
    return procedure, kind, name


def scope_from(procedure: Procedure, library: Library | None = None) -> Scope:
    """Return a procedure with all it may hand over to; only its own start is fresh."""
    members = {procedure.procedure: procedure}
    waiting = [procedure]
    while library is not None and waiting:
        for name in handovers_of(waiting.pop()):
            other = library.procedures.get(name)
            if other is not None and name not in members:
                members[name] = other
                waiting.append(other)
    return _join(members.values(), (node_in(procedure, start_node(procedure)),))


def scope_before(procedure: Procedure, library: Library | None = None) -> Scope:
    """Return a procedure with all that may hand over to it; every start is fresh."""
    members = {procedure.procedure: procedure}
    if library is not None and procedure.procedure in library.procedures:
        callers = nx.ancestors(library_graph(library), procedure.procedure)
        members |= {name: other for name, other in library.procedures.items() if name in callers}
    return scope_of_all(members.values())


def scope_of(library: Library) -> Scope:
    """Return the whole library; every start is fresh."""
    return scope_of_all(library.procedures.values())


def scope_of_all(procedures: Iterable[Procedure]) -> Scope:
    """Return several procedures; every start is fresh."""
    members = tuple(procedures)
    return _join(members, tuple(node_in(each, start_node(each)) for each in members))


def is_end(scope: Scope, node: str) -> bool:
    """Return whether a procedure ends here: a cause with its remedy, or `done`."""
    _, kind, _ = parts_of(node)
    return kind == "done" or (kind == "cause" and node in scope.actions)


def _join(procedures: Iterable[Procedure], starts: tuple[str, ...]) -> Scope:
    graph = nx.DiGraph()
    actions: dict[str, Action] = {}
    first_steps: dict[str, str] = {}
    for procedure in procedures:
        add_procedure(graph, procedure, node_in(procedure, ""))
        actions |= _actions(procedure)
        first_steps[procedure.procedure] = node_in(procedure, start_node(procedure))
    for node in tuple(graph):
        _, kind, name = parts_of(node)
        if kind == "procedure" and name in first_steps:
            graph.add_edge(node, first_steps[name], answers=())
    graph.add_nodes_from(starts)
    order = _ordered(graph)
    effects = {node: effects_of(actions[node]) if node in actions else NOTHING for node in graph}
    return Scope(graph, effects, actions, starts, order)


def _ordered(graph: nx.DiGraph) -> tuple[str, ...]:
    """Return the nodes, each before those it leads to; loops are cut for that."""
    if leads_on(graph):
        return tuple(graph)
    _cut_loops(graph)
    return tuple(nx.topological_sort(graph))


def _actions(procedure: Procedure) -> dict[str, Action]:
    steps = {node_in(procedure, f"step:{name}"): step for name, step in procedure.steps.items()}
    causes = {
        node_in(procedure, f"cause:{name}"): cause for name, cause in procedure.causes.items()
    }
    return {**steps, **causes}


def _cut_loops(graph: nx.DiGraph) -> None:
    # Within a knot of loops, only the ways that lead on in the order of the files are kept.
    order = {node: number for number, node in enumerate(graph)}
    for knot in list(nx.strongly_connected_components(graph)):
        inside = [
            (tail, head)
            for tail in knot
            for head in graph.successors(tail)
            if head in knot and order[head] <= order[tail]
        ]
        graph.remove_edges_from(inside)
