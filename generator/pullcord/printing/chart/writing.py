"""A flowchart as it goes on paper: numbered steps, boxes to tick and lines to write on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from pullcord.drawing.chart import Chart, Node, Paragraph

NO_BREAK = "\u00a0"
TICK_BOX = "☐"


@dataclass(frozen=True)
class Extra:
    """What a chart's node says on paper beside what it says on the screen."""

    number: str = ""
    """The step's number on all other sheets."""
    notes: str = ""
    """The numbers of its caution notes, printed behind the signal word."""
    limits: str = ""
    """What a reading should be; empty when nobody knows."""
    line: str = ""
    """A line to write a reading on."""


def for_writing(chart: Chart, extras: Mapping[str, Extra], summary: str) -> Chart:
    """Return the chart with what its nodes say on paper and a box before every answer."""
    none = Extra()
    return replace(
        chart,
        summary=summary,
        nodes=tuple(_node(node, extras.get(node.id, none)) for node in chart.nodes),
        edges=tuple(
            replace(edge, answers=tuple(map(_ticked, edge.answers))) for edge in chart.edges
        ),
    )


def _node(node: Node, extra: Extra) -> Node:
    said = list(node.paragraphs)
    if extra.number:
        said[0] = replace(said[0], text=f"{extra.number}.{NO_BREAK}{said[0].text}")
    said += [Paragraph(extra.limits, "title")] if extra.limits else []
    said += [Paragraph(extra.line, "detail")] if extra.line else []
    return replace(node, paragraphs=tuple(said), note=extra.notes)


def _ticked(answer: str) -> str:
    # The box keeps to the first word of its answer.
    return f"{TICK_BOX}{NO_BREAK}{answer}"
