"""Steps, causes and tools that only got another name, told by what they say."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from difflib import SequenceMatcher
from typing import TypeVar

from pullcord.model.procedure import Procedure, Step
from pullcord.model.target import Target

Thing = TypeVar("Thing")

LEAST_ALIKE = 0.75
"""How much of two texts must be the same for them to be taken for one thing, 0 to 1."""
MOST_PAIRS = 4000
"""More pairs than this are not held against one another: no review reads on so far."""


@dataclass(frozen=True)
class Renames:
    """New names by old ones, of what only got another name."""

    steps: Mapping[str, str] = field(default_factory=dict)
    causes: Mapping[str, str] = field(default_factory=dict)
    tools: Mapping[str, str] = field(default_factory=dict)


def find_renames(old: Procedure, new: Procedure) -> Renames:
    """Return what has another name in the new procedure and says nearly the same."""
    return Renames(
        steps=_renamed(old.steps, new.steps, lambda step: f"{step.title}\n{step.do}"),
        causes=_renamed(old.causes, new.causes, lambda cause: f"{cause.title}\n{cause.remedy}"),
        tools=_renamed(old.tools, new.tools, lambda tool: tool.title),
    )


def with_new_names(procedure: Procedure, renames: Renames) -> Procedure:
    """Return a procedure in which everything has its new name already."""
    steps = {
        renames.steps.get(name, name): _step(step, renames)
        for name, step in procedure.steps.items()
    }
    return procedure.model_copy(
        update={
            "start": renames.steps.get(procedure.start, procedure.start),
            "steps": steps,
            "causes": _keyed(procedure.causes, renames.causes),
            "tools": _keyed(procedure.tools, renames.tools),
        }
    )


def new_node(node: str, renames: Renames) -> str:
    """Return the name a graph node has in the new procedure."""
    kind, _, name = node.partition(":")
    names = {"step": renames.steps, "cause": renames.causes}.get(kind, {})
    return f"{kind}:{names.get(name, name)}" if name else node


def _renamed(
    old: Mapping[str, Thing], new: Mapping[str, Thing], text: Callable[[Thing], str]
) -> dict[str, str]:
    gone = [name for name in old if name not in new]
    come = [name for name in new if name not in old]
    if len(gone) * len(come) > MOST_PAIRS:
        return {}
    pairs = sorted(
        (-_likeness(text(old[one]), text(new[other])), gone.index(one), come.index(other))
        for one in gone
        for other in come
    )
    found: dict[str, str] = {}
    for score, one, other in pairs:
        is_free = gone[one] not in found and come[other] not in found.values()
        if -score >= LEAST_ALIKE and is_free:
            found[gone[one]] = come[other]
    return found


def _likeness(old: str, new: str) -> float:
    """Return how much of two texts is the same, 0 to 1; 0 when that is surely too little."""
    matcher = SequenceMatcher(None, old, new, autojunk=False)
    is_hopeless = matcher.real_quick_ratio() < LEAST_ALIKE or matcher.quick_ratio() < LEAST_ALIKE
    return 0.0 if is_hopeless else matcher.ratio()


def _step(step: Step, renames: Renames) -> Step:
    return step.model_copy(
        update={
            "needs": tuple(renames.tools.get(name, name) for name in step.needs),
            "answers": {words: _target(to, renames) for words, to in step.answers.items()},
            "then": step.then and _target(step.then, renames),
            "tells": {
                words: tuple(renames.causes.get(name, name) for name in names)
                for words, names in step.tells.items()
            },
            "after": step.after and tuple(renames.steps.get(name, name) for name in step.after),
        }
    )


def _target(target: Target, renames: Renames) -> Target:
    kind, _, name = new_node(target.node, renames).partition(":")
    return Target(target.kind, name) if kind in ("step", "cause") else target


def _keyed(things: Mapping[str, Thing], names: Mapping[str, str]) -> dict[str, Thing]:
    return {names.get(name, name): thing for name, thing in things.items()}
