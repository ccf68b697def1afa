"""How procedures stand together: the dangerous ones first, the rest by what one is out to show."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.analysis.purpose import purposes
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


def name_groups(words: Mapping[str, str], library: Library) -> tuple[NameGroup, ...]:
    """Return every procedure in one group, without empty groups.

    What is dangerous as it stands comes first, then the stages in their order, then what serves
    none of them. In a stage those it names come first, in its own order.
    """
    serves, urgent = purposes(library), _urgent(library)
    calm = [name for name in library.procedures if name not in urgent]
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


def in_order(words: Mapping[str, str], library: Library) -> tuple[str, ...]:
    """Return the names of all procedures in the order of their groups."""
    return tuple(name for group in name_groups(words, library) for name in group.names)


def _urgent(library: Library) -> tuple[str, ...]:
    return tuple(name for name, each in library.procedures.items() if is_urgent(each))
