"""Procedures that hand over to one another, followed together, once for all of them.

A rule asks of each procedure what may hold on its own ways, into whatever it hands over to.
Followed from every start anew, that is the square of a library whose procedures all lead to one
another. So a family is followed once, from all its starts together: what holds on a way from one
start is among what holds there. Where a family is in no conflict, none of its procedures is; only
one that may be is followed from its own start, to tell on which way.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

import networkx as nx

from pullcord.graph import library_graph
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.flow import Followed, Same, follow, put_right_on_every_way
from pullcord.safety.scope import scope_of
from pullcord.safety.vocabulary import State


@dataclass(frozen=True)
class Family:
    """Procedures with all they hand over to and all that hand over to them, without a circle."""

    followed: Followed
    """From every start, each of them fresh."""
    right: Mapping[str, State]
    """What is put right on every way from a node: the same from wherever one began."""
    handovers: nx.DiGraph
    """Of the whole library."""


def family_of(procedure: Procedure, library: Library | None) -> Family | None:
    """Return a procedure's family.

    None when there is no library or it holds another procedure of that name, and for a family
    that hands over in a circle, which is an error of its own: each is then followed by itself.
    """
    name = procedure.procedure
    if library is None or library.procedures.get(name) is not procedure:
        return None
    return _family(Same((library,)), families(library)[name])


def families(library: Library) -> Mapping[str, tuple[str, ...]]:
    """Return the names of each procedure's family by its own, in the order of the library."""
    return _families(Same((library,)))


@lru_cache(maxsize=4)
def _handovers(key: Same) -> nx.DiGraph:
    (library,) = key.parts
    return library_graph(library)


@lru_cache(maxsize=4)
def _families(key: Same) -> Mapping[str, tuple[str, ...]]:
    graph = _handovers(key)
    order = {name: place for place, name in enumerate(graph)}
    groups = nx.weakly_connected_components(graph)
    sorted_groups = (tuple(sorted(group, key=order.__getitem__)) for group in groups)
    return {name: group for group in sorted_groups for name in group}


@lru_cache(maxsize=4)  # Procedures are checked in the order of their files: families take turns.
def _family(key: Same, names: tuple[str, ...]) -> Family | None:
    (library,) = key.parts
    graph = _handovers(key)
    if not nx.is_directed_acyclic_graph(graph.subgraph(names)):
        return None
    known = {name: library.procedures[name] for name in names if name in library.procedures}
    scope = scope_of(Library.model_construct(procedures=known))
    return Family(follow(scope), put_right_on_every_way(scope), graph)
