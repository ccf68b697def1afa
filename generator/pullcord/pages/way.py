"""Ways between the sections of a page: where an answer leads, and from where one comes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pullcord.graph import ways_out
from pullcord.model.procedure import Library, Procedure, Step
from pullcord.model.target import Target
from pullcord.pages.address import procedure_uri, target_link
from pullcord.pages.order import Order


@dataclass(frozen=True)
class Way:
    """One link between sections, its words decided."""

    said: str
    """The answer that takes it."""
    kind: str
    """What stands at its other end: `step`, `cause`, `procedure` or `done`."""
    label: str
    """What a reader on paper looks for, such as `Step 4`."""
    title: str
    href: str


@dataclass(frozen=True)
class Signposts:
    """Everything that is needed to word a way on a procedure's page."""

    procedure: Procedure
    library: Library
    order: Order
    words: Mapping[str, str]

    def way(self, said: str, target: Target) -> Way:
        """Return the way that an answer takes."""
        uri = procedure_uri(self.procedure.procedure)
        label = self.words[f"way_{target.kind}"].format(number=self.number(target))
        return Way(said, target.kind, label, self.title(target), target_link(uri, target))

    def number(self, target: Target) -> str:
        """Return the number of a step or the letter of a cause; empty for anything else."""
        return self.order.numbers.get(target.node, "")

    def title(self, target: Target) -> str:
        """Return what stands at the target, as its own heading says it; empty for the end."""
        match target.kind:
            case "step":
                return self.procedure.steps[target.name].title
            case "cause":
                return self.procedure.causes[target.name].title
            case "procedure":
                return self.library.procedures[target.name].title
            case "done":
                return ""


def answers(posts: Signposts, name: str, step: Step) -> tuple[Way, ...]:
    """Return where each answer of a step leads, in the author's order."""
    said = {answer: _said(posts.words, step, answer) for _, answer, _ in ways_out(name, step)}
    return tuple(posts.way(said[answer], target) for _, answer, target in ways_out(name, step))


def reached_from(posts: Signposts, node: str) -> tuple[Way, ...]:
    """Return the steps that lead to a node, in the page's order, each with its answer."""
    return tuple(
        posts.way(_said(posts.words, step, answer), Target("step", name))
        for name, step, answer in _arrivals(posts, node)
    )


def _arrivals(posts: Signposts, node: str) -> Iterator[tuple[str, Step, str]]:
    for name in posts.order.steps:
        step = posts.procedure.steps[name]
        for _, answer, target in ways_out(name, step):
            if target.node == node:
                yield name, step, answer


def _said(words: Mapping[str, str], step: Step, answer: str) -> str:
    if not answer:
        return words["go_on"]
    if step.reading is None:
        return answer
    return words.get(f"reading_{answer}", answer)
