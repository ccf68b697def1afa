"""What a procedure's flowchart says, before anybody asks where it goes on the paper."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Literal

from pullcord.graph import procedure_graph, start_node
from pullcord.model.procedure import Cause, Procedure, Reading, Step
from pullcord.readings.sheet import place_words
from pullcord.safety.box import Box, SignalWord

Kind = Literal["start", "process", "decision", "cause", "hand-over", "done", "connector"]
Role = Literal["title", "detail", "limits"]
"""`limits`: what a reading should be. It stays on one line, and may differ from page to page."""

START = "start"
"""The one node of a chart that is not in the procedure's graph: where reading begins."""

_KIND_WORDS = {
    "start": "Start",
    "process": "Step",
    "decision": "Check",
    "cause": "Cause",
    "hand-over": "Go on with another procedure",
    "done": "End",
    "connector": "Connector",
}


@dataclass(frozen=True)
class Paragraph:
    """A piece of a node's text, not yet broken into lines."""

    text: str
    role: Role


@dataclass(frozen=True)
class Node:
    """One symbol of the chart."""

    id: str
    """The graph's node, such as `step:plug`; `start` for the beginning."""
    kind: Kind
    name: str
    """What a screen reader says: the kind, the signal word and the whole text."""
    paragraphs: tuple[Paragraph, ...]
    signal: SignalWord | None = None
    """The gravest of the caution boxes that stand before it."""
    href: str | None = None
    """A relative link."""
    note: str = ""
    """What is printed behind the signal word, such as the number of a note on the same sheet."""


@dataclass(frozen=True)
class Edge:
    """One way from a node to another, with the answers that take it."""

    tail: str
    head: str
    answers: tuple[str, ...] = ()


@dataclass(frozen=True)
class Chart:
    """A flowchart: the start, then steps and causes in the procedure's order."""

    name: str
    """The procedure's name; it keeps identifiers of several charts on one page apart."""
    title: str
    summary: str
    """One or two sentences for those who do not see the chart."""
    nodes: tuple[Node, ...]
    edges: tuple[Edge, ...]


@dataclass(frozen=True)
class OtherProcedure:
    """A procedure that this one may hand over to."""

    title: str
    href: str
    """A relative link to its page."""


@dataclass(frozen=True)
class _Source:
    procedure: Procedure
    boxes: Mapping[str, tuple[Box, ...]]
    others: Mapping[str, OtherProcedure] = field(default_factory=dict)
    limits: Mapping[str, str] = field(default_factory=dict)


def chart_of(
    procedure: Procedure,
    boxes: Mapping[str, tuple[Box, ...]],
    others: Mapping[str, OtherProcedure] | None = None,
    limits: Mapping[str, str] | None = None,
    never: Mapping[str, frozenset[str]] | None = None,
) -> Chart:
    """Return the chart of a procedure.

    `boxes` gives the caution boxes of a graph node (`step:plug`, `cause:coil-open`); a node that is
    not in it has none. `others` gives title and link of the procedures it may hand over to, by
    name; one that is not in it is shown by its name and without a link. `limits` gives what a
    reading should be, in a few words, by graph node. `never` gives answers that no reading can be:
    they are left out, unless nothing else stands on their arrow.
    """
    graph = procedure_graph(procedure)
    source = _Source(procedure, boxes, others or {}, limits or {})
    first = start_node(procedure)
    nodes = (_start(procedure), *(_node(source, id_) for id_ in graph.nodes))
    edges = [Edge(START, first)] if first in graph else []
    for tail, head, answers in graph.edges(data="answers"):
        given = [answer for answer in answers if answer not in (never or {}).get(tail, ())]
        edges.append(Edge(tail, head, tuple(one_line(answer) for answer in given or answers)))
    return Chart(
        name=procedure.procedure,
        title=one_line(procedure.title),
        summary=_summary(procedure),
        nodes=nodes,
        edges=tuple(edges),
    )


def one_line(text: str) -> str:
    """Return the text on one line, without characters that no page may hold."""
    kept = (" " if c.isspace() else c for c in text)
    safe = "".join("\ufffd" if unicodedata.category(c) in {"Cc", "Cs", "Cn"} else c for c in kept)
    return " ".join(safe.split())


def _start(procedure: Procedure) -> Node:
    return Node(
        id=START,
        kind="start",
        name=f"Start: {one_line(procedure.title)}",
        paragraphs=(Paragraph("Start", "title"), Paragraph(one_line(procedure.title), "detail")),
        href=f"#step-{procedure.start}",
    )


def _node(source: _Source, id_: str) -> Node:
    kind, paragraphs = _text(source, *id_.split(":", 1))
    signal = max((box.signal for box in source.boxes.get(id_, ())), default=None)
    spoken = " ".join(_sentence(paragraph.text) for paragraph in paragraphs)
    warning = f" {signal.name}." if signal else ""
    return Node(
        id=id_,
        kind=kind,
        name=f"{_KIND_WORDS[kind]}:{warning} {spoken}",
        paragraphs=paragraphs,
        signal=signal,
        href=_href(source, *id_.split(":", 1)),
    )


def _text(source: _Source, kind: str, name: str = "") -> tuple[Kind, tuple[Paragraph, ...]]:
    procedure = source.procedure
    if kind == "step" and name in procedure.steps:
        step = procedure.steps[name]
        limits = source.limits.get(f"step:{name}", "")
        return "decision" if step.answers else "process", tuple(_step_text(step, limits))
    if kind == "cause" and name in procedure.causes:
        return "cause", _titled(procedure.causes[name])
    if kind == "procedure":
        title = source.others[name].title if name in source.others else name
        return "hand-over", (Paragraph("Go on with", "detail"), Paragraph(one_line(title), "title"))
    if kind == "done":
        proves = Paragraph(one_line(procedure.proves), "detail") if procedure.proves else None
        return "done", (Paragraph("Done", "title"), *((proves,) if proves else ()))
    return "process", (Paragraph(name, "title"),)


def _titled(part: Step | Cause) -> tuple[Paragraph, ...]:
    return (Paragraph(one_line(part.title), "title"),)


def _step_text(step: Step, limits: str) -> Iterator[Paragraph]:
    yield from _titled(step)
    if step.ask:
        yield Paragraph(one_line(step.ask), "detail")
    elif step.reading:
        yield Paragraph(_reading_text(step.reading), "detail")
    if limits:
        yield Paragraph(one_line(limits), "limits")


def _reading_text(reading: Reading) -> str:
    places = (place_words(place) for place in (reading.at, reading.against) if place)
    return one_line(f"{reading.quantity.capitalize()}, {' to '.join(places)}")


def _href(source: _Source, kind: str, name: str = "") -> str | None:
    procedure = source.procedure
    if kind == "procedure":
        return source.others[name].href if name in source.others else None
    defined = {"step": procedure.steps, "cause": procedure.causes}.get(kind, {})
    return f"#{kind}-{name}" if name in defined else None


def _sentence(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else f"{text}."


def _summary(procedure: Procedure) -> str:
    checks = sum(1 for step in procedure.steps.values() if step.answers)
    start = procedure.steps.get(procedure.start)
    begins = f" It begins with: {_sentence(one_line(start.title))}" if start else ""
    return (
        f"Flowchart of the procedure “{one_line(procedure.title)}”: {_count(checks, 'check')} "
        f"lead to {_count(len(procedure.causes), 'cause')}.{begins} "
        "Every step is also written out on this page, with its answers and where they lead."
    )


def _count(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
