"""What may hold at each node, and what is put right on every way from it.

Three analyses of a scope's graph, each one pass in topological order. Every condition begins and
ends by itself, so the joins lose nothing for a single condition: the result is that of following
every path. Whether two conditions can hold on the SAME path is asked in `pullcord.safety.witness`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache, reduce
from operator import is_
from typing import Any

import networkx as nx

from pullcord.model.procedure import Library, Procedure
from pullcord.safety.effects import exposure, state_leaving
from pullcord.safety.scope import Scope, is_end, scope_from
from pullcord.safety.vocabulary import CONDITIONS, State

EVERYTHING: State = frozenset(CONDITIONS)
NOTHING: State = frozenset()


@dataclass(frozen=True)
class Followed:
    """A scope with what may hold on entering each of its nodes."""

    scope: Scope
    entering: Mapping[str, State]

    def exposure_at(self, node: str) -> State:
        """Return what a person may meet at a node; one nobody reaches is met fresh."""
        return exposure(self._entering(node), self.scope.effects[node])

    def leaving(self, node: str) -> State:
        """Return what may hold when a node is over."""
        return state_leaving(self._entering(node), self.scope.effects[node])

    def _entering(self, node: str) -> State:
        return self.entering.get(node, self.scope.fresh)


def follow(scope: Scope) -> Followed:
    """Follow the state through a scope."""
    return Followed(scope, entering_states(scope))


def follow_from(procedure: Procedure, library: Library | None = None) -> Followed:
    """Follow the state from a procedure's start through all it may hand over to."""
    return _follow_from(Same((procedure, library)))


@dataclass(frozen=True, eq=False)
class Same:
    """The very objects as the key of what was worked out from them: records have no hash.

    Being held by the key, they cannot make way for others of the same address meanwhile.
    """

    parts: tuple[Any, ...]

    def __hash__(self) -> int:
        """Tell objects apart by where they lie."""
        return hash(tuple(map(id, self.parts)))

    def __eq__(self, other: object) -> bool:
        """Say whether these are the same objects, not only alike."""
        return (
            isinstance(other, Same)
            and len(self.parts) == len(other.parts)
            and all(map(is_, self.parts, other.parts))
        )


@lru_cache(maxsize=16)
def _follow_from(asked: Same) -> Followed:
    # Ten rules ask the same of one procedure, one after the other.
    return follow(scope_from(*asked.parts))


def entering_states(scope: Scope) -> Mapping[str, State]:
    """Return what may hold on entering each node that can be reached (forward, join: union)."""
    entering: dict[str, State] = dict.fromkeys(scope.starts, scope.fresh)
    for node in scope.order:
        if node not in entering:
            continue
        leaving = state_leaving(entering[node], scope.effects[node])
        for head in scope.graph.successors(node):
            entering[head] = entering.get(head, NOTHING) | leaving
    return entering


def put_right_on_every_way(scope: Scope) -> Mapping[str, State]:
    """Return, for each node, what is ended on every way from it to an end (backward, join: both).

    A way that leads nowhere (a target nobody defined, a dead end) promises everything: whatever
    is wrong with it is reported as that.
    """
    right: dict[str, State] = {}
    for node in reversed(scope.order):
        ways = [scope.effects[head].ends | right[head] for head in scope.graph.successors(node)]
        right[node] = reduce(State.intersection, ways) if ways else _at_an_end(scope, node)
    return right


def _at_an_end(scope: Scope, node: str) -> State:
    return NOTHING if is_end(scope, node) else EVERYTHING


def nearest_passed(scope: Scope) -> Mapping[str, str]:
    """Return, for each node reached, the nearest other one that every way to it passes.

    These are the immediate dominators, from the scope's first start, which has none.
    """
    start = scope.starts[0]
    above = nx.immediate_dominators(scope.graph, start)
    return {node: over for node, over in above.items() if node != start}


def passed_on_every_way(nearest: Mapping[str, str], node: str) -> tuple[str, ...]:
    """Return all that every way to a node passes, nearest first.

    A make-safe step protects a node for certain if it is among them.
    """
    passed = []
    while node in nearest:
        node = nearest[node]
        passed.append(node)
    return tuple(passed)
