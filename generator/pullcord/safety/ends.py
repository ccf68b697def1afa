"""What a procedure leaves behind: opened and never closed, closed and never opened."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache

from pullcord.finding import Flaw, Place
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.effects import key_that_meets, rows_of, state_during
from pullcord.safety.family import family_of, ways_of
from pullcord.safety.flow import Followed, Same, follow, follow_from, put_right_on_every_way
from pullcord.safety.scope import (
    Scope,
    is_end,
    node_in,
    own_nodes,
    parts_of,
    scope_before,
)
from pullcord.safety.vocabulary import CONDITIONS, State
from pullcord.safety.witness import Way, short_name, told, ways_from

LOOSE_ENDS: State = frozenset(each.id for each in CONDITIONS.values() if each.loose_end)
MANY = 3
"""How many ends a finding names beside the one it shows the way to."""


def check_put_right(procedure: Procedure, library: Library | None) -> Iterator[Flaw]:
    """Yield a flaw for each thing a step brings about that is not put right on every way out."""
    family = family_of(procedure, library)
    if family and procedure.procedure not in _careless(family):
        return
    followed = follow_from(procedure, library)
    scope = followed.scope
    left = _not_put_right(procedure, followed, put_right_on_every_way(scope))
    if not left:
        return
    ways_in = ways_from(scope, scope.starts[0], frozenset())
    for node, condition in left:
        yield _left(scope, ways_in[node], condition)


@lru_cache(maxsize=1024)
def _careless(family: Same) -> frozenset[str]:
    """Return the procedures of a family that leave something behind on some way out."""
    ways = ways_of(family)
    return frozenset(
        each.procedure for each in family.parts if _not_put_right(each, ways.followed, ways.right)
    )


@lru_cache(maxsize=1024)
def _forgetful(family: Same) -> frozenset[str]:
    """Return the procedures of a family that put right what no way there can have begun."""
    followed = ways_of(family).followed
    return frozenset(each.procedure for each in family.parts if any(_never_begun(each, followed)))


def _not_put_right(
    procedure: Procedure, followed: Followed, right: Mapping[str, State]
) -> list[tuple[str, str]]:
    """Return each node of a procedure that begins what is not put right on every way from it."""
    # What another procedure begins is reported in the file it stands in.
    own = (node_in(procedure, node) for node in own_nodes(procedure))
    reached = (node for node in own if node in followed.entering)
    begins = {node: followed.scope.effects[node].begins & LOOSE_ENDS for node in reached}
    return [
        (node, condition)
        for node, begun in begins.items()
        if begun
        for condition in CONDITIONS
        if condition in begun - right[node]
    ]


def check_ever_begun(procedure: Procedure, library: Library | None) -> Iterator[Flaw]:
    """Yield a flaw for each thing put right that no way there can have brought about."""
    family = family_of(procedure, library)
    if family and procedure.procedure not in _forgetful(family):
        return
    suspects = list(_never_begun(procedure, follow_from(procedure, library)))
    if not suspects:
        return
    # Another procedure may have brought it about before it handed over.
    confirmed = set(_never_begun(procedure, follow(scope_before(procedure, library))))
    for place, condition in suspects:
        if (place, condition) in confirmed:
            yield Flaw(
                at=place,
                message=f"{place[0][:-1]} `{place[1]}`: "
                f"on no way here can it be that {CONDITIONS[condition].says}",
                mend="declare it in the step that brings it about, or take this key out",
            )


def _never_begun(procedure: Procedure, followed: Followed) -> Iterator[tuple[tuple[str, ...], str]]:
    scope = followed.scope
    for own in own_nodes(procedure):
        node = node_in(procedure, own)
        entering = followed.entering.get(node)
        if entering is None:
            continue
        _, kind, name = parts_of(node)
        during = state_during(entering, scope.effects[node])
        for row in rows_of(scope.actions[node]):
            for condition in row.ends:
                if condition not in during and not CONDITIONS[condition].may_be_found:
                    yield (f"{kind}s", name, row.verb), condition


def _left(scope: Scope, way_in: Way, condition: str) -> Flaw:
    node = way_in[-1]
    home, kind, name = parts_of(node)
    enders = frozenset(each for each in scope.graph if condition in scope.effects[each].ends)
    ways_out = ways_from(scope, node, enders)
    ends = [end for end in ways_out if is_end(scope, end)]
    way_out = ways_out[ends[0]]
    others = [short_name(end, home) for end in ends if end != way_out[-1]]
    also = f"\nThe same at {_some(others)}." if others else ""
    says = CONDITIONS[condition].says
    key = key_that_meets(scope.actions[node], frozenset({condition}))
    place: Place = (f"{kind}s", name, key) if key else (f"{kind}s", name)
    way = (*way_in, *way_out[1:])
    return Flaw(
        at=place,
        message=f"{short_name(node, home)}: from here {says}, and it is not put right at the end "
        f"{short_name(way_out[-1], home)}, on this way:\n"
        f"{told(scope, way, {node: frozenset({condition})})}{also}",
        mend=f"write `{CONDITIONS[condition].put_right_by}` in a step or a remedy on every way out",
    )


def _some(names: list[str]) -> str:
    rest = len(names) - MANY
    return ", ".join(names[:MANY]) + (f" and {rest} more" if rest > 0 else "")
