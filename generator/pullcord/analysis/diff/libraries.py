"""Two states of a library held against each other: procedures and machine sheets."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal, TypeVar

from pullcord.analysis.diff.causes import compare_causes
from pullcord.analysis.diff.cautions import compare_cautions
from pullcord.analysis.diff.change import Change, Difference, Part
from pullcord.analysis.diff.machines import compare_machines
from pullcord.analysis.diff.paths import compare_paths
from pullcord.analysis.diff.renames import find_renames, with_new_names
from pullcord.analysis.diff.steps import compare_steps
from pullcord.analysis.diff.time import compare_time
from pullcord.analysis.diff.whole import compare_whole
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library, Procedure
from pullcord.readings import parse_meter
from pullcord.safety.notes import safety_notes

Thing = TypeVar("Thing", Procedure, Machine)
_ORDER = {part: place for place, part in enumerate(Part)}


@dataclass(frozen=True)
class Side:
    """One state: a library, and what of it is held against the other."""

    library: Library
    procedures: Collection[str]
    machines: Collection[str] = ()


def compare_libraries(old: Side, new: Side) -> tuple[Difference, ...]:
    """Return what differs, procedures first, then machines, each by name.

    Things of the same name belong together; where each side has just one, they do whatever their
    names are. Both libraries must be free of errors.
    """
    meters = (parse_meter(old.library.meter), parse_meter(new.library.meter))
    notes = (safety_notes(old.library), safety_notes(new.library))

    def procedures(before: Procedure, after: Procedure) -> Iterator[Change]:
        renames = find_renames(before, after)
        named = with_new_names(before, renames)
        earlier, later = notes[0][before.procedure], notes[1][after.procedure]
        yield from compare_whole(named, after, renames)
        yield from compare_steps(named, after, renames, meters)
        yield from compare_causes(named, after, renames)
        yield from compare_paths(named, after)
        yield from compare_cautions(earlier, later, renames)
        yield from compare_time(named, after)

    def machines(before: Machine, after: Machine) -> Iterator[Change]:
        yield from compare_machines(before, after, meters)

    return (
        *_compared(
            "procedure",
            {name: old.library.procedures[name] for name in sorted(old.procedures)},
            {name: new.library.procedures[name] for name in sorted(new.procedures)},
            procedures,
        ),
        *_compared(
            "machine",
            {name: old.library.machines[name] for name in sorted(old.machines)},
            {name: new.library.machines[name] for name in sorted(new.machines)},
            machines,
        ),
    )


def _compared(
    kind: Literal["procedure", "machine"],
    old: Mapping[str, Thing],
    new: Mapping[str, Thing],
    compare: Callable[[Thing, Thing], Iterator[Change]],
) -> Iterator[Difference]:
    if len(old) == len(new) == 1:
        old = dict(zip(new, old.values(), strict=True))
    for name in sorted({*old, *new}):
        if name not in new:
            yield Difference(kind, name, old[name].title, "removed")
        elif name not in old:
            yield Difference(kind, name, new[name].title, "added")
        else:
            changes = sorted(compare(old[name], new[name]), key=lambda each: _ORDER[each.part])
            if changes:
                was = getattr(old[name], kind)
                was = was if was != name else ""
                yield Difference(kind, name, new[name].title, "changed", tuple(changes), was)
