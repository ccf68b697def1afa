"""A procedure as a networkx graph, and the library as one.

Nodes are strings: `step:NAME`, `cause:NAME`, `procedure:NAME` and `done`. An edge carries
`answers`, the tuple of answers that take it; a step that goes on without asking carries ().
"""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from pullcord.finding import Place
from pullcord.model.procedure import Library, Procedure, Step
from pullcord.model.target import Target


def ways_out(name: str, step: Step) -> Iterator[tuple[Place, str, Target]]:
    """Yield each way out of a step: its place in the file, its answer ("" for none), its target."""
    if step.then is not None:
        yield ("steps", name, "then"), "", step.then
    for answer, target in step.answers.items():
        yield ("steps", name, "answers", answer), answer, target


def handovers_of(procedure: Procedure) -> tuple[str, ...]:
    """Return the names a procedure may hand over to, each once, known or not."""
    targets = (
        target
        for step in procedure.steps.values()
        for target in (step.then, *step.answers.values())
    )
    return tuple(dict.fromkeys(to.name for to in targets if to and to.kind == "procedure"))


def procedure_graph(procedure: Procedure) -> nx.DiGraph:
    """Return the graph of all steps and causes, reachable or not; targets nobody defined too."""
    graph = nx.DiGraph(name=procedure.procedure)
    add_procedure(graph, procedure)
    return graph


def add_procedure(graph: nx.DiGraph, procedure: Procedure, before: str = "") -> None:
    """Add a procedure's nodes and edges to a graph, with `before` before the name of each node."""
    graph.add_nodes_from([f"{before}step:{name}" for name in procedure.steps])
    graph.add_nodes_from([f"{before}cause:{name}" for name in procedure.causes])
    answers: dict[tuple[str, str], tuple[str, ...]] = {}
    for name, step in procedure.steps.items():
        tail = f"{before}step:{name}"
        for _, answer, target in ways_out(name, step):
            way = (tail, f"{before}{target.node}")
            answers[way] = (*answers.get(way, ()), answer) if answer else answers.get(way, ())
    graph.add_edges_from([(*way, {"answers": those}) for way, those in answers.items()])


def library_graph(library: Library) -> nx.DiGraph:
    """Return the graph whose nodes are procedure names and whose edges are hand-overs."""
    graph = nx.DiGraph()
    graph.add_nodes_from(library.procedures)
    for name, procedure in library.procedures.items():
        graph.add_edges_from([(name, to) for to in handovers_of(procedure)])
    return graph


def start_node(procedure: Procedure) -> str:
    """Return the node the procedure begins at."""
    return f"step:{procedure.start}"


def leads_on(graph: nx.DiGraph) -> bool:
    """Return whether every edge leads to a later node in the graph's own order.

    Most procedures are written so. Then nothing goes round, and the order is a topological one.
    """
    place = {node: number for number, node in enumerate(graph)}
    return all(place[tail] < place[head] for tail, heads in graph.adjacency() for head in heads)


def find_loops(graph: nx.DiGraph) -> Iterator[tuple[str, ...]]:
    """Yield one shortest loop of every knot of nodes that lead back to themselves.

    Each loop begins with the knot's earliest node and does not name it again at its end.
    """
    if leads_on(graph):
        return
    order = {node: number for number, node in enumerate(graph)}
    for knot in nx.strongly_connected_components(graph):
        first = min(knot, key=order.__getitem__)
        if len(knot) > 1 or graph.has_edge(first, first):
            yield _shortest_loop(graph, first, knot)


def unreachable_from(graph: nx.DiGraph, start: str) -> tuple[str, ...]:
    """Return the nodes that no way from the start reaches, in the graph's own order."""
    reached = nx.descendants(graph, start) | {start}
    return tuple(node for node in graph if node not in reached)


def _shortest_loop(graph: nx.DiGraph, first: str, knot: set[str]) -> tuple[str, ...]:
    # Breadth first from the node's own successors; in the order of the file, so always the same.
    came_from: dict[str, str] = {}
    waiting = [first]
    for node in waiting:
        for successor in graph.successors(node):
            if successor == first:
                return _way_back(came_from, first, node)
            if successor in knot and successor not in came_from:
                came_from[successor] = node
                waiting.append(successor)
    return (first,)


def _way_back(came_from: dict[str, str], first: str, last: str) -> tuple[str, ...]:
    way = [last]
    while way[-1] != first:
        way.append(came_from[way[-1]])
    return tuple(reversed(way))
