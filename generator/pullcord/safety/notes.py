"""Everything the safety analysis says to a reader, for a whole library in one go."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from pullcord.model.procedure import Library
from pullcord.safety.box import Box
from pullcord.safety.boxes import boxes_within
from pullcord.safety.family import families, ways_of
from pullcord.safety.flow import Same
from pullcord.safety.walkaway import BeforeStart, start_within, walk_away_within


@dataclass(frozen=True)
class SafetyNotes:
    """What one procedure's page and prints must say. Nodes are those of the procedure's graph."""

    boxes: Mapping[str, tuple[Box, ...]]
    """The caution boxes before every step and remedy."""
    walk_away: Mapping[str, tuple[str, ...]]
    """What to see to when one stops after a step or remedy: condition identifiers, in order."""
    before_start: BeforeStart


def safety_notes(library: Library) -> Mapping[str, SafetyNotes]:
    """Return every procedure's notes by its name; what one hands over counts in the next."""
    procedures = library.procedures
    groups = dict.fromkeys(families(library).values())
    # What is held is for a preview, which asks again after every change: the last build's will do.
    if _notes.cache_info().currsize > 2 * len(groups):
        _notes.cache_clear()
    known = (tuple(procedures[name] for name in names) for names in groups)
    found = {name: notes for family in known for name, notes in _notes(Same(family)).items()}
    return {name: found[name] for name in procedures}


@cache
def _notes(key: Same) -> Mapping[str, SafetyNotes]:
    followed = ways_of(key).followed
    return {
        procedure.procedure: SafetyNotes(
            boxes=boxes_within(followed, procedure),
            walk_away=walk_away_within(followed, procedure),
            before_start=start_within(followed, procedure),
        )
        for procedure in key.parts
    }
