"""Charts made up by chance, for what must hold of every chart."""

from __future__ import annotations

import networkx as nx
from hypothesis import strategies as st

from pullcord.drawing.chart import START, Chart, Edge, Kind, Node, Paragraph
from pullcord.safety.box import SignalWord

WORDS = ("Pull the cap", "Look", "Measure the winding at both of its ends", "Smell for petrol")
ANSWERS = ("yes", "no", "hardly any", "between the tank and the tap", "below", "within")


@st.composite
def charts(draw: st.DrawFn, most: int = 200) -> Chart:
    """Return an acyclic chart in which the start leads, directly or not, to every other node."""
    size = draw(st.integers(1, most))
    back = draw(st.lists(st.integers(1, 8), min_size=size, max_size=size))
    more = draw(st.lists(st.tuples(st.integers(0, most), st.integers(1, 40)), max_size=size // 3))
    graph = nx.DiGraph()
    graph.add_edge(START, "n0")
    for head in range(1, size):
        graph.add_edge(f"n{max(0, head - back[head])}", f"n{head}")
    for tail, step in more:
        if tail + step < size:
            graph.add_edge(f"n{tail}", f"n{tail + step}")
    return chart_from(graph)


def chart_from(graph: nx.DiGraph) -> Chart:
    """Return a chart of a graph: a check where several ways part, a cause where none leads on."""
    return Chart(
        name="any",
        title="Any",
        summary="Any chart.",
        nodes=tuple(_node(graph, name, place) for place, name in enumerate(graph)),
        edges=tuple(
            Edge(tail, head, (ANSWERS[place % len(ANSWERS)],) if graph.out_degree(tail) > 1 else ())
            for place, (tail, head) in enumerate(graph.edges)
        ),
    )


def _node(graph: nx.DiGraph, name: str, place: int) -> Node:
    said = (Paragraph(f"{place}. {WORDS[place % len(WORDS)]}", "title"),)
    signal = SignalWord.WARNING if place % 3 == 0 else None
    return Node(name, _kind(graph, name), name, said, signal, note="1, 3" if signal else "")


def _kind(graph: nx.DiGraph, name: str) -> Kind:
    ways = graph.out_degree(name)
    if name == START:
        return "start"
    return "cause" if ways == 0 else "decision" if ways > 1 else "process"
