"""Ways between the sections of a page: where an answer leads, and from where one comes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from pullcord.graph import ways_out
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library, Procedure, Step
from pullcord.model.target import Target
from pullcord.pages.address import anchor, link, procedure_uri
from pullcord.pages.order import Order
from pullcord.pages.subject import Subject
from pullcord.readings import Resolved, is_fitting


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
    answer: str = ""
    """A reading's answer as it stands in the file, for scripts; empty for any other."""
    shows: str = ""
    """What the instrument shows when the answer is proved; empty when it cannot be said."""


@dataclass(frozen=True)
class Signposts:
    """Everything that is needed to word a way on a procedure's page."""

    procedure: Procedure
    library: Library
    order: Order
    words: Mapping[str, str]
    subject: Subject

    @property
    def uri(self) -> str:
        """Return the page's own address."""
        return procedure_uri(self.procedure.procedure, self.subject.name)

    @property
    def fitting(self) -> tuple[Machine, ...]:
        """Return the machines the procedure applies to."""
        machines = self.library.machines.values()
        return tuple(machine for machine in machines if is_fitting(self.procedure, machine))

    @cached_property
    def readings(self) -> Mapping[str, Resolved]:
        """What each reading should show on the page's machine, by step."""
        return {
            name: self.subject.resolve(step, step.reading)
            for name, step in self.procedure.steps.items()
            if step.reading
        }

    def never(self, name: str) -> frozenset[str]:
        """Return the answers of a step that no reading gives: nothing is below `under 1 ohm`."""
        shares = self.readings[name].shares if name in self.readings else ()
        return frozenset(share.answer for share in shares if share.interval.is_empty)

    def way(self, said: str, target: Target) -> Way:
        """Return the way that an answer takes."""
        label = self.words[f"way_{target.kind}"].format(number=self.number(target))
        return Way(said, target.kind, label, self.title(target), self.href(target))

    def href(self, target: Target) -> str:
        """Return the link an answer carries: on its own page, or to another procedure's."""
        if target.kind == "procedure":
            return link(self.uri, procedure_page_uri(self.library, target.name, self.subject))
        return f"#{anchor(target.node)}"

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


def procedure_page_uri(library: Library, name: str, subject: Subject) -> str:
    """Return the address of a procedure's page for a subject: the general one if it has no own."""
    procedure, machine = library.procedures.get(name), subject.machine
    is_own = procedure is not None and machine is not None and is_fitting(procedure, machine)
    return procedure_uri(name, subject.name if is_own else "")


def answers(posts: Signposts, name: str, step: Step) -> dict[str, Way]:
    """Return where each answer of a step leads, in the author's order, by the answer.

    Left out is what no reading of this machine can be: it would only be taken by mistake.
    """
    never = posts.never(name)
    return {
        answer: posts.way(_said(posts.words, step, answer), target)
        for _, answer, target in ways_out(name, step)
        if answer not in never
    }


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
            if target.node == node and answer not in posts.never(name):
                yield name, step, answer


def _said(words: Mapping[str, str], step: Step, answer: str) -> str:
    if not answer:
        return words["go_on"]
    if step.reading is None:
        return answer
    return words.get(f"reading_{answer}", answer)
