"""Things that must not come together, and the search for a way on which they do."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from pullcord.finding import Flaw, Place
from pullcord.graph import ways_out
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.effects import Effects, key_that_meets, state_during
from pullcord.safety.family import family_of, reached_from, ways_of
from pullcord.safety.flow import (
    Followed,
    Same,
    follow_from,
    nearest_passed,
    passed_on_every_way,
)
from pullcord.safety.scope import Scope, parts_of
from pullcord.safety.vocabulary import State, says
from pullcord.safety.witness import Way, begun_at, short_name, shortest_ways, state_on, told


@dataclass(frozen=True, eq=False)  # There is one of each, and it is a key of many lookups.
class Conflict:
    """A step that brings about one of `triggers` while one of each of `together` may hold."""

    triggers: State
    together: tuple[State, ...]
    excused: State = frozenset()
    """A step that itself ends one of these is not in conflict: it can do no better."""

    def is_met(self, during: State, effects: Effects) -> bool:
        """Return whether a step with such effects, in such a state, is in this conflict."""
        return (
            not self.triggers.isdisjoint(effects.meets)
            and all(not clause.isdisjoint(during) for clause in self.together)
            and self.excused.isdisjoint(effects.ends)
        )

    @property
    def watched(self) -> State:
        """Return every condition that takes part."""
        return self.triggers.union(*self.together)


@dataclass(frozen=True)
class Clash:
    """A node with a way on which it is in conflict."""

    conflict: Conflict
    way: Way


def check_conflicts(
    procedure: Procedure, library: Library | None, conflicts: tuple[Conflict, ...], mend: str
) -> Iterator[Flaw]:
    """Yield a flaw for each step or remedy that is in conflict on some way from the start.

    Where another procedure is in conflict only because of what this one hands over, the flaw
    stands at the answer that hands over.
    """
    if not may_clash(procedure, library, conflicts):
        return
    followed = follow_from(procedure, library)
    clashes = find_clashes(followed, conflicts)
    if not clashes:
        return
    nearest = nearest_passed(followed.scope)
    home = procedure.procedure
    theirs = _found_without(procedure, library, clashes, conflicts)
    for node, clash in clashes.items():
        if node not in theirs:
            passed = passed_on_every_way(nearest, node)
            yield _flaw(procedure, followed.scope, clash, _mend(passed, mend, home))


def may_clash(
    procedure: Procedure, library: Library | None, conflicts: tuple[Conflict, ...]
) -> bool:
    """Return whether a procedure, or what it hands over to, may be in conflict on some way.

    Cheap to ask: what is in no conflict when all ways are taken together is in none.
    """
    family = family_of(procedure, library)
    if family is None:
        return True
    suspects = _suspects(family, conflicts)
    return bool(suspects) and not suspects.isdisjoint(reached_from(family, procedure.procedure))


@lru_cache(maxsize=4096)
def _suspects(family: Same, conflicts: tuple[Conflict, ...]) -> frozenset[str]:
    """Return the procedures of a family with a step or remedy that may be in conflict."""
    return frozenset(
        name
        for name, during, effects in ways_of(family).bringing
        for conflict in conflicts
        if conflict.is_met(during, effects)
    )


def find_clashes(followed: Followed, conflicts: tuple[Conflict, ...]) -> Mapping[str, Clash]:
    """Return every node in conflict, with the first conflict it is in and the shortest way."""
    clashes: dict[str, Clash] = {}
    for conflict in conflicts:
        for node, way in _ways_into(followed, conflict).items():
            clashes.setdefault(node, Clash(conflict, way))
    return clashes


def _ways_into(followed: Followed, conflict: Conflict) -> Mapping[str, Way]:
    scope = followed.scope

    def is_met(node: str, entering: State) -> bool:
        effects = scope.effects[node]
        return conflict.is_met(state_during(entering, effects), effects)

    # Where not even all ways taken together make a conflict, no single way does.
    if not any(is_met(node, entering) for node, entering in followed.entering.items()):
        return {}
    return shortest_ways(scope, conflict.watched, is_met)


def _found_without(
    procedure: Procedure,
    library: Library | None,
    clashes: Mapping[str, Clash],
    conflicts: tuple[Conflict, ...],
) -> frozenset[str]:
    foreign = {name for name, _, _ in map(parts_of, clashes)} - {procedure.procedure}
    if library is None or not foreign:
        return frozenset()
    next_procedures = {
        target.name
        for name, step in procedure.steps.items()
        for _, _, target in ways_out(name, step)
        if target.kind == "procedure" and target.name in library.procedures
    }
    return frozenset(
        node
        for name in next_procedures
        for node in find_clashes(follow_from(library.procedures[name], library), conflicts)
        if parts_of(node)[0] != procedure.procedure
    )


def _flaw(procedure: Procedure, scope: Scope, clash: Clash, mend: str) -> Flaw:
    node = clash.way[-1]
    effects = scope.effects[node]
    brought = effects.meets & clash.conflict.triggers
    during = state_during(state_on(scope, clash.way), effects)
    others = frozenset().union(*(clause & during for clause in clash.conflict.together)) - brought
    begun = begun_at(scope, clash.way, brought | others)
    return Flaw(
        at=place_on(procedure, scope, clash.way, brought),
        message=f"{short_name(node, procedure.procedure)}: {says(brought)} while "
        f"{says(others or brought)}, on this way:\n{told(scope, clash.way, begun)}",
        mend=mend,
    )


def place_on(procedure: Procedure, scope: Scope, way: Way, brought: State) -> Place:
    """Return the author's place for the last node of a way: its key, or the answer leading away."""
    name, kind, own = parts_of(way[-1])
    if name == procedure.procedure:
        key = key_that_meets(scope.actions[way[-1]], brought)
        place: Place = ("causes" if kind == "cause" else "steps", own)
        return (*place, key) if key else place
    return handover_on(procedure, way)


def handover_on(procedure: Procedure, way: Way) -> Place:
    """Return the place of the answer by which a way leaves a procedure."""
    leaving = next(node for node in way if parts_of(node)[1] == "procedure")
    last = parts_of(way[way.index(leaving) - 1])[2]
    wanted = parts_of(leaving)[2]
    return next(
        place
        for place, _, target in ways_out(last, procedure.steps[last])
        if target.kind == "procedure" and target.name == wanted
    )


def _mend(passed: tuple[str, ...], mend: str, home: str) -> str:
    steps = [node for node in passed if parts_of(node)[1] == "step"]
    if not steps:
        return mend
    return f"{mend}; every way there passes {short_name(steps[0], home)}"
