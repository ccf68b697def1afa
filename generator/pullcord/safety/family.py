"""Procedures that hand over to one another, followed together, once for all of them.

A rule asks of each procedure what may hold on its own ways, into whatever it hands over to.
Followed from every start anew, that is the square of a library whose procedures all lead to one
another. So a family is followed once, from all its starts together: what holds on a way from one
start is among what holds there. Where a family is in no conflict, none of its procedures is; only
one that may be is followed from its own start, to tell on which way.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

import networkx as nx

from pullcord.graph import handovers_of
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.effects import Effects, state_during
from pullcord.safety.flow import Followed, Same, follow, put_right_on_every_way
from pullcord.safety.scope import parts_of, scope_of_all
from pullcord.safety.vocabulary import State


@dataclass(frozen=True)
class Ways:
    """All ways through a family."""

    followed: Followed
    """From every start, each of them fresh."""
    right: Mapping[str, State]
    """What is put right on every way from a node: the same from wherever one began."""
    bringing: tuple[tuple[str, State, Effects], ...]
    """Of each node reached that brings something about: its procedure, what may hold during it,
    and its effects."""


def family_of(procedure: Procedure, library: Library | None) -> Same | None:
    """Return a procedure with all it hands over to and all that hand over to it, as a key.

    None when there is no library or it holds another procedure of that name, and for several
    that hand over in a circle, which is an error of its own: each is then followed by itself.
    """
    name = procedure.procedure
    if library is None or library.procedures.get(name) is not procedure:
        return None
    return _families(Same((library,)))[name][1]


def families(library: Library) -> Mapping[str, tuple[str, ...]]:
    """Return the names of each procedure's family by its own, in the order of the library."""
    return {name: names for name, (names, _) in _families(Same((library,))).items()}


@lru_cache(maxsize=4)  # Families are checked in the order of their files: several take turns.
def ways_of(family: Same) -> Ways:
    """Follow a family."""
    scope = scope_of_all(family.parts)
    followed = follow(scope)
    return Ways(followed, put_right_on_every_way(scope), tuple(_bringing(followed)))


def _bringing(followed: Followed) -> Iterator[tuple[str, State, Effects]]:
    for node, entering in followed.entering.items():
        effects = followed.scope.effects[node]
        if effects.meets:
            yield parts_of(node)[0], state_during(entering, effects), effects


@lru_cache(maxsize=1024)
def reached_from(family: Same, name: str) -> frozenset[str]:
    """Return the names of a procedure and of all it may hand over to, at once or in the end."""
    return frozenset({name, *nx.descendants(_handovers(family), name)})


@lru_cache(maxsize=4)
def _families(key: Same) -> Mapping[str, tuple[tuple[str, ...], Same | None]]:
    """Return each procedure's family by its name: its names, and its key unless it goes round."""
    (library,) = key.parts
    graph = _handovers(Same(tuple(library.procedures.values())))
    order = {name: place for place, name in enumerate(graph)}
    found: dict[str, tuple[tuple[str, ...], Same | None]] = {}
    for group in nx.weakly_connected_components(graph):
        names = tuple(sorted(group, key=order.__getitem__))
        family = Same(tuple(library.procedures[name] for name in names))
        is_circle = len(names) > 1 and not nx.is_directed_acyclic_graph(graph.subgraph(group))
        found |= dict.fromkeys(names, (names, None if is_circle else family))
    return found


@lru_cache(maxsize=4)
def _handovers(procedures: Same) -> nx.DiGraph:
    """Return who hands over to whom of these, in their order."""
    names = {procedure.procedure for procedure in procedures.parts}
    graph = nx.DiGraph()
    graph.add_nodes_from(procedure.procedure for procedure in procedures.parts)
    for procedure in procedures.parts:
        heads = (name for name in handed_to(procedure) if name in names)
        graph.add_edges_from((procedure.procedure, name) for name in heads)
    return graph


def handed_to(procedure: Procedure) -> tuple[str, ...]:
    """Return the names a procedure may hand over to, each once, known or not."""
    return _handed_to(Same((procedure,)))


@lru_cache(maxsize=1024)  # Asked again after every change in a preview, of all that did not change.
def _handed_to(key: Same) -> tuple[str, ...]:
    return handovers_of(*key.parts)
