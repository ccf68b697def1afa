"""The library as one drawing: every procedure a box, every hand-over an arrow.

A hand-over that can also be followed through a third procedure gets no arrow of its own: the
drawing is the transitive reduction of the hand-overs, so that a library in which nearly everything
may lead to a leak can still be read. Who draws it says so beside it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import networkx as nx

from pullcord.drawing.chart import Chart, Edge, Node, Paragraph, one_line
from pullcord.drawing.draw import ChartSettings, laid_out
from pullcord.drawing.geometry import Geometry
from pullcord.drawing.style import Style
from pullcord.drawing.svg import render_chart
from pullcord.safety.box import SignalWord

MAP_STYLE = Style(column_px=150, beside_px=16, below_px=28)
"""Narrow boxes, since many stand side by side."""


@dataclass(frozen=True)
class MapBox:
    """One procedure on the map."""

    title: str
    purpose: str
    """What it is for, in a few words; empty when nobody says."""
    href: str
    """A relative link to its page."""
    signal: SignalWord | None = None
    """The word that stands at it, when it is dangerous as it stands."""


@dataclass(frozen=True)
class MapWords:
    """What the map is called."""

    title: str
    summary: str
    """For those who do not see it."""


def map_chart(boxes: Mapping[str, MapBox], hand_overs: nx.DiGraph, words: MapWords) -> Chart:
    """Return the chart of the procedures in `boxes`, in their order.

    `hand_overs` has their names as nodes; what is not in `boxes` is left out. Hand-overs that go
    round in a circle are all drawn: what follows from which cannot be told there.
    """
    known = hand_overs.subgraph(boxes)
    drawn = nx.transitive_reduction(known) if nx.is_directed_acyclic_graph(known) else known
    place = {name: number for number, name in enumerate(boxes)}
    edges = sorted(drawn.edges, key=lambda edge: (place[edge[0]], place[edge[1]]))
    return Chart(
        name="library-map",
        title=one_line(words.title),
        summary=one_line(words.summary),
        nodes=tuple(_node(name, box) for name, box in boxes.items()),
        edges=tuple(Edge(_id(tail), _id(head)) for tail, head in edges),
    )


def draw_map(chart: Chart, settings: ChartSettings) -> tuple[str, Geometry]:
    """Return the map as an escaped SVG element, and its geometry. Raises LayoutError."""
    geometry = laid_out(chart, (MAP_STYLE,), settings)
    return render_chart(geometry, settings.template_dirs), geometry


def _node(name: str, box: MapBox) -> Node:
    title, purpose = one_line(box.title), one_line(box.purpose)
    warning = f"{box.signal.name}. " if box.signal else ""
    detail = (Paragraph(purpose, "detail"),) if purpose else ()
    return Node(
        id=_id(name),
        kind="hand-over",
        name=f"Procedure: {warning}{title}.{f' {purpose}.' if purpose else ''}",
        paragraphs=(Paragraph(title, "title"), *detail),
        signal=box.signal,
        href=box.href,
    )


def _id(name: str) -> str:
    return f"procedure:{name}"
