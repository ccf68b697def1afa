"""What must be done before a check may be asked, in whatever order the checks are put.

- A check that says `after:` needs exactly the steps it names, and what those need in turn.
- A check that does not needs every action (a step that asks nothing) on every way to it. Actions
  are fences for it too: it is not asked after an action that the author put behind it, which may
  have undone what it needs.
- Actions on some ways only, just before a check or between the last check and an outcome, are done
  every time; of several such chains the quickest is counted.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.analysis.tree import Tree
from pullcord.graph import start_node


@dataclass(frozen=True)
class Needs:
    """What stands before each check and each outcome."""

    before: Mapping[str, frozenset[str]]
    """By step: all steps that must have been done, directly or in turn."""
    fences: Mapping[str, frozenset[str]]
    """By check: the actions after which it is not asked any more."""
    lead_ins: Mapping[str, tuple[str, ...]]
    """By graph node: actions to be done every time just before it, in order."""
    impossible: frozenset[str]
    """Steps whose needs go round in a circle or name a step no way leads to."""


def read_needs(tree: Tree) -> Needs:
    """Return what every step that can be reached needs."""
    direct = {step: _direct(tree, step) for step in tree.order}
    before = {step: _in_turn(direct, step) for step in tree.order}
    reached = set(tree.order)
    return Needs(
        before=before,
        fences={check: _fence(tree, check) for check in tree.checks},
        lead_ins=_lead_ins(tree, before),
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


def _lead_ins(tree: Tree, before: Mapping[str, frozenset[str]]) -> dict[str, tuple[str, ...]]:
    """Return the quickest chain of actions just before each node, without what it needs anyway."""
    chains: dict[str, tuple[str, ...]] = {start_node(tree.procedure): ()}
    for step in tree.order:
        own = () if tree.asks(step) else (*chains[f"step:{step}"], step)
        for way in tree.ways[step]:
            known = chains.get(way.to)
            if known is None or minutes_of(tree, own) < minutes_of(tree, known):
                chains[way.to] = own
    return {node: _not_needed(tree, node, chain, before) for node, chain in chains.items()}


def _not_needed(
    tree: Tree, node: str, chain: tuple[str, ...], before: Mapping[str, frozenset[str]]
) -> tuple[str, ...]:
    name = node.removeprefix("step:")
    if node == name:
        return chain
    if tree.procedure.steps[name].after is not None:
        return ()
    return tuple(step for step in chain if step not in before[name])
