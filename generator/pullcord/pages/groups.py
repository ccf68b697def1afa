"""How procedures stand together: the dangerous ones first, the rest by what one is out to show."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import networkx as nx

from pullcord.analysis.purpose import purposes
from pullcord.graph import library_graph
from pullcord.model.procedure import Library
from pullcord.safety.urgent import is_urgent

URGENT = "urgent"
REST = "other"


@dataclass(frozen=True)
class NameGroup:
    """Procedures that stand together, by name."""

    id: str
    """`urgent`, or `to-` and a stage's name, or `other`."""
    title: str
    names: tuple[str, ...]
    stage: str = ""
    """The stage's own title; empty for a group that is none."""


Groups = tuple[NameGroup, ...]
"""Every procedure in one group, and no group that is empty."""


def name_groups(words: Mapping[str, str], library: Library) -> Groups:
    """Return the groups of a library.

    What is dangerous as it stands comes first, then the stages in their order, then what serves
    none of them. In a stage those it names come first, in its own order; then whatever hands over
    to others before these.
    """
    serves, order = purposes(library), _order(library)
    urgent = tuple(name for name in order if is_urgent(library.procedures[name]))
    calm = [name for name in order if name not in urgent]
    groups = [NameGroup(URGENT, words["group_urgent"], urgent)]
    for id_, stage in library.stages.items():
        mine = [name for name in calm if serves.get(name) == id_]
        first = [name for name in stage.looked_for_in if name in mine]
        names = tuple(dict.fromkeys([*first, *mine]))
        title = words["group_stage"].format(title=stage.title)
        groups.append(NameGroup(f"to-{id_}", title, names, stage.title))
    rest = tuple(name for name in calm if name not in serves)
    groups.append(NameGroup(REST, words["group_other"], rest))
    return tuple(group for group in groups if group.names)


def in_order(groups: Groups) -> tuple[str, ...]:
    """Return the names of all procedures in the order of their groups."""
    return tuple(name for group in groups for name in group.names)


def _order(library: Library) -> tuple[str, ...]:
    graph = library_graph(library).subgraph(library.procedures)
    if not nx.is_directed_acyclic_graph(graph):
        return tuple(library.procedures)
    place = {name: number for number, name in enumerate(library.procedures)}
    return tuple(nx.lexicographical_topological_sort(graph, key=place.__getitem__))
