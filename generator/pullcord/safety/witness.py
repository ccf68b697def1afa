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
MOST_TOLD = 15
"""How many steps of a way are told from either end."""


def shortest_ways(
    scope: Scope, watch: State, is_met: Callable[[str, State], bool]
) -> Mapping[str, Way]:
    """Return the shortest way to every node for which `is_met(node, state on entering)`.

    Only the watched conditions are followed, but those exactly: the states of different ways are
    never mixed, so whatever is found together does hold together. Of several shortest ways the one
    that comes first in the files is returned. With k watched conditions a node is visited at most
    2**k times.
    """
    first = (scope.starts[0], scope.fresh & watch)
    came_from: dict[Moment, Moment | None] = {first: None}
    waiting = deque([first])
    ways: dict[str, Way] = {}
    while waiting:
        moment = waiting.popleft()
        node, entering = moment
        if node not in ways and is_met(node, entering):
            ways[node] = tuple(reversed(list(_back(came_from, moment))))
        leaving = state_leaving(entering, scope.effects[node]) & watch
        for head in scope.graph.successors(node):
            if (head, leaving) not in came_from:
                came_from[head, leaving] = moment
                waiting.append((head, leaving))
    return ways


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
    """Return a way as numbered lines: titles, answers, and where each condition began.

    Of a very long way only its beginning, its end and the marked places are told.
    """
    lines = []
    skipped = False
    for number, (node, head) in enumerate(zip(way, (*way[1:], None), strict=True), start=1):
        is_told = min(number, len(way) + 1 - number) <= MOST_TOLD or node in begun
        if is_told:
            lines.append(f"  {number}. {_line(scope, node, head, begun, parts_of(way[0])[0])}")
        elif not skipped:
            lines.append("  ...")
        skipped = not is_told
    return "\n".join(lines)


def _line(scope: Scope, node: str, head: str | None, begun: Mapping[str, State], home: str) -> str:
    mark = "; ".join(CONDITIONS[each].says for each in CONDITIONS if each in begun.get(node, ()))
    words = [_name(scope, node, home)]
    words += [f"[here: {mark}]"] if mark else []
    return " ".join([*words, *_answer(scope, node, head)])


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


def ways_from(scope: Scope, tail: str, avoid: frozenset[str]) -> Mapping[str, Way]:
    """Return the shortest way from a node to every other one, past no node to be avoided."""
    graph = nx.restricted_view(scope.graph, avoid - {tail}, ())
    ways = nx.single_source_shortest_path(graph, tail)
    return {head: tuple(way) for head, way in ways.items()}
