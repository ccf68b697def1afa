"""The charts of a made-up library for other programs: the same nodes and arrows, other words for
how they are drawn.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

from pullcord.graph import procedure_graph
from pullcord.model.procedure import Procedure
from pullcord.project import load_project


def procedures_of(folder: Path) -> dict[str, Procedure]:
    """Return the procedures of a folder by name."""
    return dict(load_project([folder]).library.procedures)


def dot_of(procedure: Procedure) -> str:
    """Return the chart in Graphviz's language."""
    nodes, arrows = _parts(procedure)
    lines = [f"{key} [label={json.dumps(title)}, shape={shape}]" for key, title, shape in nodes]
    lines += [f"{tail} -> {head} [label={json.dumps(said)}]" for tail, head, said in arrows]
    return "digraph {\n" + "\n".join(lines) + "\n}"


def mermaid_of(procedure: Procedure) -> str:
    """Return the chart in Mermaid's language."""
    nodes, arrows = _parts(procedure)
    forms = {"diamond": "{{{}}}", "box": "[{}]"}
    lines = [key + forms[shape].format(json.dumps(title)) for key, title, shape in nodes]
    lines += [f'{tail} -->|"{said}"| {head}' if said else f"{tail} --> {head}"
              for tail, head, said in arrows]  # fmt: skip
    return "flowchart TD\n" + "\n".join(lines)


def rst_of(procedure: Procedure) -> str:
    """Return a page with the chart and the text of the procedure as reStructuredText."""
    chart = "\n".join(f"   {line}" for line in dot_of(procedure).splitlines())
    return "\n".join(
        [
            *_heading(procedure.title, "="),
            procedure.symptom,
            "",
            procedure.about,
            "",
            f".. graphviz::\n\n{chart}\n",
            *_steps(procedure),
            *_causes(procedure),
        ]
    )


def _steps(procedure: Procedure) -> Iterator[str]:
    for step in procedure.steps.values():
        yield from _heading(step.title, "-")
        for text in (step.do, step.why, step.ask):
            yield from (text or "", "")
        for answer, target in step.answers.items():
            yield f"* {answer}: {title_of(procedure, target.node)}"
        yield ""


def _causes(procedure: Procedure) -> Iterator[str]:
    for cause in procedure.causes.values():
        yield from (*_heading(cause.title, "-"), cause.remedy, "")


def _heading(title: str, line: str) -> list[str]:
    return [title, line * len(title), ""]


_Parts = tuple[list[tuple[str, str, str]], list[tuple[str, str, str]]]


def _parts(procedure: Procedure) -> _Parts:
    graph = procedure_graph(procedure)
    keys = {node: f"n{number}" for number, node in enumerate(graph)}
    nodes = [(keys[node], title_of(procedure, node), _shape(procedure, node)) for node in graph]
    arrows = [(keys[tail], keys[head], " / ".join(answers))
              for tail, head, answers in graph.edges(data="answers")]  # fmt: skip
    return nodes, arrows


def title_of(procedure: Procedure, node: str) -> str:
    """Return what stands in a node."""
    kind, _, name = node.partition(":")
    if kind == "step":
        step = procedure.steps[name]
        return step.ask or step.title
    return procedure.causes[name].title if kind == "cause" else name or "Done"


def _shape(procedure: Procedure, node: str) -> str:
    kind, _, name = node.partition(":")
    return "diamond" if kind == "step" and procedure.steps[name].ask else "box"
