"""A procedure as a graph: what its nodes and edges are, its loops, what cannot be reached."""

from __future__ import annotations

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.graph import (
    find_loops,
    handovers_of,
    leads_on,
    library_graph,
    procedure_graph,
    start_node,
    unreachable_from,
)
from pullcord.model.procedure import Library
from tests.safety.make import procedure

BOUNDED = settings(max_examples=100, deadline=None, print_blob=True)


def test_nodes_are_steps_causes_and_wherever_an_answer_leads() -> None:
    """Also what nobody leads to, and what nobody defined."""
    graph = procedure_graph(
        procedure("""
steps:
  a: {ask: Well, answers: {yes it is: step b, not at all: cause c, perhaps: cause c}}
  b: {ask: Well, answers: {on: procedure other, off: done, lost: step nowhere}}
  d: {then: step b}
causes: {c: {}, e: {}}
""")
    )
    assert list(graph) == [
        "step:a", "step:b", "step:d", "cause:c", "cause:e", "procedure:other", "done",
        "step:nowhere",
    ]  # fmt: skip
    assert graph.edges["step:a", "cause:c"]["answers"] == ("not at all", "perhaps")
    assert graph.edges["step:d", "step:b"]["answers"] == ()


def test_a_library_is_a_graph_of_hand_overs() -> None:
    """Each pair of procedures is joined once, however often one hands over."""
    first = procedure("steps: {a: {ask: W, answers: {x: procedure two, y: procedure two}}}", "one")
    second = procedure("steps: {a: {then: done}}", "two")
    graph = library_graph(Library(procedures={"one": first, "two": second}))
    assert list(graph.edges) == [("one", "two")]


def test_each_procedure_handed_over_to_is_named_once() -> None:
    """In the order of the file, whether or not a question leads there."""
    steps = "a: {ask: W, answers: {x: procedure two, y: step b, z: procedure two}}"
    first = procedure(f"steps: {{{steps}, b: {{then: procedure one}}}}")
    assert handovers_of(first) == ("two", "one")


def test_the_start_node() -> None:
    """The first thing a reader does."""
    assert start_node(procedure("steps: {first: {then: done}}")) == "step:first"


ORDERS = {
    "forward only": ("abc", [("a", "b"), ("a", "c"), ("b", "c")], True),
    "back once": ("abc", [("a", "c"), ("c", "b")], False),
    "to itself": ("ab", [("a", "b"), ("b", "b")], False),
    "nowhere": ("ab", [], True),
}


@pytest.mark.parametrize(("nodes", "edges", "does"), ORDERS.values(), ids=ORDERS)
def test_whether_every_way_leads_on(nodes: str, edges: list[tuple[str, str]], does: bool) -> None:
    """It is asked of the order in which the nodes stand."""
    graph = nx.DiGraph()
    graph.add_nodes_from(nodes)
    graph.add_edges_from(edges)
    assert leads_on(graph) is does


LOOPS = {
    "none": ([("a", "b"), ("b", "c"), ("a", "c")], []),
    "to itself": ([("a", "b"), ("b", "b")], [("b",)]),
    "there and back": ([("a", "b"), ("b", "a")], [("a", "b")]),
    "the shorter of two": ([("a", "b"), ("b", "c"), ("c", "a"), ("b", "a")], [("a", "b")]),
    "two of them": (
        [("a", "b"), ("b", "a"), ("b", "c"), ("c", "d"), ("d", "c")],
        [("a", "b"), ("c", "d")],
    ),
    "begun at the earliest": ([("s", "c"), ("a", "b"), ("b", "c"), ("c", "a")], [("c", "a", "b")]),
}


@pytest.mark.parametrize(("edges", "loops"), LOOPS.values(), ids=LOOPS)
def test_find_loops(edges, loops) -> None:
    """One shortest loop for each knot, begun at its earliest node."""
    assert sorted(find_loops(nx.DiGraph(edges))) == loops


EDGES = st.lists(st.tuples(st.integers(0, 8), st.integers(0, 8)), max_size=25)


@BOUNDED
@given(EDGES)
def test_loops_are_those_networkx_knows(edges) -> None:
    """No loop is missed or made up, and none is longer than the shortest through its start."""
    graph = nx.DiGraph([(str(tail), str(head)) for tail, head in edges])
    loops = list(find_loops(graph))
    assert bool(loops) is not nx.is_directed_acyclic_graph(graph)
    every = [set(loop) for loop in nx.simple_cycles(graph)]
    for loop in loops:
        assert all(graph.has_edge(*leg) for leg in zip(loop, (*loop[1:], loop[0]), strict=True))
        assert len(loop) == min(len(other) for other in every if loop[0] in other)


@BOUNDED
@given(EDGES)
def test_unreachable_is_what_no_path_leads_to(edges) -> None:
    """The same as asking networkx for a path to each node."""
    graph = nx.DiGraph([("0", "0"), *((str(tail), str(head)) for tail, head in edges)])
    lost = {node for node in graph if not nx.has_path(graph, "0", node)}
    assert set(unreachable_from(graph, "0")) == lost
