"""A flowchart as it goes on paper: boxes to tick, lines to write on, and connectors between sheets.

Connectors are those of ISO 5807: a circle with a letter where an arrow leaves the sheet, and the
same letter where it comes in on another, each saying which sheet its partner is on.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

import networkx as nx

from pullcord.drawing.chart import Chart, Edge, Node, Paragraph

TICK_BOX = "☐"
WRITE_LINE = "Read: ____________"
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Without I and O, which look like figures in a greasy hand's writing."""


def chart_graph(chart: Chart) -> nx.DiGraph:
    """Return the chart's nodes and arrows as a graph of node ids."""
    graph = nx.DiGraph()
    graph.add_nodes_from(node.id for node in chart.nodes)
    graph.add_edges_from((edge.tail, edge.head) for edge in chart.edges)
    return graph


def for_writing(chart: Chart, read_at: frozenset[str], notes: Mapping[str, str]) -> Chart:
    """Return the chart with a box before every answer and a line at every reading.

    `read_at` holds the nodes that take a reading; `notes` the numbers of the caution notes of a
    node, as they are printed behind its signal word.
    """
    return replace(
        chart,
        nodes=tuple(_node_for_writing(node, read_at, notes) for node in chart.nodes),
        edges=tuple(
            replace(edge, answers=tuple(f"{TICK_BOX} {answer}" for answer in edge.answers))
            for edge in chart.edges
        ),
    )


def on_sheets(chart: Chart, sheets: Sequence[Sequence[str]]) -> tuple[Chart, ...]:
    """Return the part of the chart on each sheet, joined by lettered connectors.

    `sheets` holds each node of the chart exactly once.
    """
    sheet_of = {node: number for number, sheet in enumerate(sheets) for node in sheet}
    crossing = [edge for edge in chart.edges if sheet_of[edge.tail] != sheet_of[edge.head]]
    heads = list(dict.fromkeys(edge.head for edge in crossing))
    letters = {head: letter(number) for number, head in enumerate(heads)}
    return tuple(
        _one_sheet(chart, frozenset(sheet), sheet_of, letters) if len(sheets) > 1 else chart
        for sheet in sheets
    )


def letter(number: int) -> str:
    """Return the letter of the connector with a number: A to Z without I and O, then AA, AB."""
    number += 1
    letters = ""
    while number:
        number, rest = divmod(number - 1, len(_LETTERS))
        letters = _LETTERS[rest] + letters
    return letters


def _node_for_writing(node: Node, read_at: frozenset[str], notes: Mapping[str, str]) -> Node:
    line = (Paragraph(WRITE_LINE, "detail"),) if node.id in read_at else ()
    return replace(node, paragraphs=node.paragraphs + line, note=notes.get(node.id, ""))


def _one_sheet(
    chart: Chart, here: frozenset[str], sheet_of: Mapping[str, int], letters: Mapping[str, str]
) -> Chart:
    nodes = [node for node in chart.nodes if node.id in here]
    nodes += _connectors_in(chart, here, sheet_of, letters)
    nodes += _connectors_out(chart, here, sheet_of, letters)
    return replace(chart, nodes=tuple(nodes), edges=tuple(_edges(chart, here)))


def _connectors_in(
    chart: Chart, here: frozenset[str], sheet_of: Mapping[str, int], letters: Mapping[str, str]
) -> Iterator[Node]:
    for head, mark in letters.items():
        tails = {edge.tail for edge in chart.edges if edge.head == head and edge.tail not in here}
        if head in here and tails:
            numbers = sorted({sheet_of[tail] + 1 for tail in tails})
            yield _connector(f"in {head}", mark, f"from {', '.join(map(str, numbers))}")


def _connectors_out(
    chart: Chart, here: frozenset[str], sheet_of: Mapping[str, int], letters: Mapping[str, str]
) -> Iterator[Node]:
    for head, mark in letters.items():
        leaves = any(edge.head == head and edge.tail in here for edge in chart.edges)
        if head not in here and leaves:
            yield _connector(f"out {head}", mark, f"to {sheet_of[head] + 1}")


def _connector(id_: str, mark: str, where: str) -> Node:
    return Node(
        id=id_,
        kind="connector",
        name=f"Connector {mark}, {where.replace(' ', ' sheet ', 1)}",
        paragraphs=(Paragraph(mark, "title"), Paragraph(where, "detail")),
    )


def _edges(chart: Chart, here: frozenset[str]) -> Iterator[Edge]:
    entered: set[str] = set()
    for edge in chart.edges:
        if edge.tail in here:
            yield edge if edge.head in here else replace(edge, head=f"out {edge.head}")
        elif edge.head in here and edge.head not in entered:
            entered.add(edge.head)
            yield Edge(f"in {edge.head}", edge.head)
