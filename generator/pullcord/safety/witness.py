"""A way through the procedures that shows a finding to be true, and how it is printed."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterator, Mapping, Sequence

import networkx as nx

from pullcord.safety.effects import state_leaving
from pullcord.safety.scope import Scope, parts_of
from pullcord.safety.vocabulary import CONDITIONS, State

Way = tuple[str, ...]
"""Nodes of a scope, from its first start on."""
Moment = tuple[str, State]


def shortest_way(scope: Scope, watch: State, is_met: Callable[[str, State], bool]) -> Way | None:
    """Return the shortest way to a node for which `is_met(node, state on entering)`, if any.

    Only the watched conditions are followed, but those exactly: the states of different ways are
    never mixed, so whatever is found together does hold together. Of several shortest ways the one
    that comes first in the files is returned.
    """
    first = (scope.starts[0], scope.fresh & watch)
    came_from: dict[Moment, Moment | None] = {first: None}
    waiting = deque([first])
    while waiting:
        moment = waiting.popleft()
        node, entering = moment
        if is_met(node, entering):
            return tuple(reversed(list(_back(came_from, moment))))
        leaving = state_leaving(entering, scope.effects[node]) & watch
        for head in scope.graph.successors(node):
            if (head, leaving) not in came_from:
                came_from[head, leaving] = moment
                waiting.append((head, leaving))
    return None


def state_on(scope: Scope, way: Way) -> State:
    """Return what holds on entering the last node of a way."""
    state = scope.fresh
    for node in way[:-1]:
        state = state_leaving(state, scope.effects[node])
    return state


def begun_at(scope: Scope, way: Way, conditions: State) -> Mapping[str, State]:
    """Return where, on a way, each condition last began; those of the start have no place."""
    last: dict[str, str] = {}
    for node in way:
        for condition in scope.effects[node].meets & conditions:
            last[condition] = node
    places: dict[str, State] = {}
    for condition, node in last.items():
        places[node] = places.get(node, frozenset()) | {condition}
    return places


def told(scope: Scope, way: Way, begun: Mapping[str, State]) -> str:
    """Return a way as numbered lines: titles, answers, and where each condition began."""
    home = parts_of(way[0])[0]
    lines = []
    for number, (node, head) in enumerate(zip(way, (*way[1:], None), strict=True), start=1):
        mark = "; ".join(
            CONDITIONS[each].says for each in CONDITIONS if each in begun.get(node, ())
        )
        words = [_name(scope, node, home)]
        words += [f"[here: {mark}]"] if mark else []
        words += _answer(scope, node, head)
        lines.append(f"  {number}. {' '.join(words)}")
    return "\n".join(lines)


def short_name(node: str, home: str) -> str:
    """Return a node in an author's words, such as "step `plug`"."""
    procedure, kind, name = parts_of(node)
    of = "" if procedure == home else f" of procedure `{procedure}`"
    return f"{kind} `{name}`{of}" if name else f"`{kind}`{of}"


def _name(scope: Scope, node: str, home: str) -> str:
    if parts_of(node)[1] == "procedure":
        return f"hands over to {short_name(node, parts_of(node)[0])}"
    action = scope.actions.get(node)
    title = getattr(action, "title", None)
    return f"{short_name(node, home)} ({title})" if title else short_name(node, home)


def _answer(scope: Scope, node: str, head: str | None) -> list[str]:
    answers: Sequence[str] = scope.graph.edges[node, head]["answers"] if head else ()
    return [f"-> {answers[0]}"] if answers else []


def _back(came_from: Mapping[Moment, Moment | None], moment: Moment) -> Iterator[str]:
    at: Moment | None = moment
    while at is not None:
        yield at[0]
        at = came_from[at]


def way_between(scope: Scope, tail: str, heads: Sequence[str], avoid: frozenset[str]) -> Way | None:
    """Return the shortest way from a node to the first of several, past no node to be avoided."""
    graph = nx.restricted_view(scope.graph, avoid - {tail}, ())
    ways = nx.single_source_shortest_path(graph, tail)
    found = [tuple(ways[head]) for head in heads if head in ways]
    return min(found, key=len, default=None)
