"""What must be done before a check may be asked, in whatever order the checks are put.

- A check that says `after:` needs exactly the steps it names, and what those need in turn.
- A check that does not needs every action (a step that asks nothing) on every way to it. Actions
  are fences for it too: it is not asked after an action that the author put behind it, which may
  have undone what it needs.
- Actions on some ways only, between a check and the next or between the last and an outcome, are
  its lead-in. Where the order is as written, the lead-in is too; anywhere else the longest counts.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.analysis.tree import Tree
from pullcord.graph import start_node

Came = tuple[str, str]
"""The last check and its answer; two empty texts at the start."""

Onward = tuple[str, tuple[str, ...]]
"""The next check or outcome, as a graph node, and the actions before it, in order."""

START: Came = ("", "")


@dataclass(frozen=True)
class Needs:
    """What stands before each check and each outcome."""

    before: Mapping[str, frozenset[str]]
    """By step: all steps that must have been done, directly or in turn."""
    fences: Mapping[str, frozenset[str]]
    """By check: the actions after which it is not asked any more."""
    onward: Mapping[Came, Onward]
    """What the author puts after each answer of each check, and after the start."""
    longest: Mapping[str, tuple[str, ...]]
    """By graph node of a check or an outcome: the lead-in with the most minutes of all that are
    written for it, without what it needs anyway."""
    impossible: frozenset[str]
    """Steps whose needs go round in a circle or name a step no way leads to."""


def read_needs(tree: Tree) -> Needs:
    """Return what every step that can be reached needs."""
    direct = {step: _direct(tree, step) for step in tree.order}
    before = {step: _in_turn(direct, step) for step in tree.order}
    reached = set(tree.order)
    onward = _onward(tree)
    return Needs(
        before=before,
        fences={check: _fence(tree, check) for check in tree.checks},
        onward=onward,
        longest=_longest(tree, onward, before),
        impossible=frozenset(
            step for step in tree.order if step in before[step] or not before[step] <= reached
        ),
    )


def needs_not_met(tree: Tree) -> tuple[tuple[str, str], ...]:
    """Return (step, step it says it comes after) wherever some way as written skips the latter."""
    return tuple(
        (step, need)
        for step in tree.order
        for need in tree.procedure.steps[step].after or ()
        if need not in tree.always_before[step]
    )


def minutes_of(tree: Tree, steps: tuple[str, ...]) -> float:
    """Return the minutes of several steps together."""
    return sum(tree.procedure.steps[step].minutes for step in steps)


def _direct(tree: Tree, step: str) -> frozenset[str]:
    said = tree.procedure.steps[step].after
    if said is not None:
        return frozenset(said)
    return frozenset(name for name in tree.always_before[step] if not tree.asks(name))


def _in_turn(direct: Mapping[str, frozenset[str]], step: str) -> frozenset[str]:
    found: set[str] = set()
    waiting = set(direct[step])
    while waiting:
        need = waiting.pop()
        found.add(need)
        waiting |= direct.get(need, frozenset()) - found
    return frozenset(found)


def _fence(tree: Tree, check: str) -> frozenset[str]:
    if tree.procedure.steps[check].after is not None:
        return frozenset()
    seen: set[str] = set()
    waiting = [check]
    while waiting:
        for way in tree.ways[waiting.pop()]:
            name = way.to.removeprefix("step:")
            if way.to != name and name not in seen:
                seen.add(name)
                waiting.append(name)
    return frozenset(name for name in seen if not tree.asks(name))


def _without_needed(
    tree: Tree, node: str, actions: tuple[str, ...], before: Mapping[str, frozenset[str]]
) -> tuple[str, ...]:
    """Return the actions of a lead-in that its node does not need anyway.

    A check that says `after:` has no lead-in; an outcome needs nothing.
    """
    if not node.startswith("step:"):
        return actions
    name = node.removeprefix("step:")
    if tree.procedure.steps[name].after is not None:
        return ()
    return tuple(step for step in actions if step not in before[name])


def _onward(tree: Tree) -> dict[Came, Onward]:
    found = {START: _past_actions(tree, start_node(tree.procedure))}
    for check in tree.checks:
        for way in tree.ways[check]:
            found[check, way.answer] = _past_actions(tree, way.to)
    return found


def _past_actions(tree: Tree, node: str) -> Onward:
    actions: list[str] = []
    while node.startswith("step:") and not tree.asks(node.removeprefix("step:")):
        actions.append(node.removeprefix("step:"))
        node = tree.ways[actions[-1]][0].to
    return node, tuple(actions)


def _longest(
    tree: Tree, onward: Mapping[Came, Onward], before: Mapping[str, frozenset[str]]
) -> dict[str, tuple[str, ...]]:
    longest: dict[str, tuple[str, ...]] = {}
    for node, actions in onward.values():
        left = _without_needed(tree, node, actions, before)
        longest[node] = max(left, longest.get(node, ()), key=lambda acts: _length(tree, acts))
    return longest


def _length(tree: Tree, actions: tuple[str, ...]) -> tuple[float, int]:
    return minutes_of(tree, actions), len(actions)
