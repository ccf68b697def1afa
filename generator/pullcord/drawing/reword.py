"""One layout for several pages: the same chart, with what differs from page to page put in.

To lay out a chart takes seconds, and a procedure has a page for every machine. On those pages only
limits, names and links differ, so the chart is laid out once, with room for the longest limits.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from pullcord.drawing.block import LIMITS_WEIGHT
from pullcord.drawing.chart import Chart, Node
from pullcord.drawing.geometry import Geometry, PlacedNode, TextLine, rounded
from pullcord.drawing.measure import text_width_px
from pullcord.drawing.repeat import original


def roomiest(charts: Sequence[Chart]) -> Chart:
    """Return the first of the charts, with the widest limits that a node has in any of them.

    The charts must be of one procedure.
    """
    columns = zip(*(chart.nodes for chart in charts), strict=True)
    return replace(charts[0], nodes=tuple(_widest(nodes) for nodes in columns))


def reword(geometry: Geometry, chart: Chart) -> Geometry:
    """Return the geometry of `roomiest` charts with the limits, names and links of one of them."""
    nodes = {node.id: node for node in chart.nodes}
    placed = tuple(_reworded(node, nodes[original(node.id)]) for node in geometry.nodes)
    return replace(geometry, title=chart.title, summary=chart.summary, nodes=placed)


def _widest(nodes: Sequence[Node]) -> Node:
    widest = max(nodes, key=lambda node: text_width_px(_limits(node), 1, LIMITS_WEIGHT))
    return replace(nodes[0], paragraphs=widest.paragraphs)


def _limits(node: Node) -> str:
    return next((part.text for part in node.paragraphs if part.role == "limits"), "")


def _reworded(placed: PlacedNode, node: Node) -> PlacedNode:
    limits = _limits(node)
    lines = (_line(line, limits) for line in placed.shape.lines)
    shape = replace(placed.shape, lines=tuple(line for line in lines if line.text))
    return replace(placed, name=node.name, href=node.href, shape=shape)


def _line(line: TextLine, limits: str) -> TextLine:
    if line.role != "limits":
        return line
    width = text_width_px(limits, line.size, line.weight)
    return replace(line, text=limits, width=rounded(width))
