"""The caution boxes of every step and every remedy: the one way to come by them.

A box follows from what may hold during the step on any way there, from a fresh start or handed over
by another procedure, and from what the step itself does. At most two boxes stand before a step: the
first speaks of the gravest hazard and its family, the second of everything else.
"""

from __future__ import annotations

from collections.abc import Mapping

from pullcord.model.procedure import Library, Procedure
from pullcord.safety.box import Box
from pullcord.safety.flow import Followed, follow
from pullcord.safety.hazards import Hazard, hazards_of, without_covered
from pullcord.safety.scope import node_in, own_nodes, scope_before
from pullcord.safety.vocabulary import State


def boxes_for(
    procedure: Procedure, library: Library | None = None
) -> Mapping[str, tuple[Box, ...]]:
    """Return the boxes of every step and cause, by graph node; a harmless one has ().

    With a library, what its other procedures may hand over counts too. For a whole library,
    `pullcord.safety.notes` does it in one go.
    """
    return boxes_within(follow(scope_before(procedure, library)), procedure)


def boxes_within(followed: Followed, procedure: Procedure) -> Mapping[str, tuple[Box, ...]]:
    """Return the boxes of a procedure that is part of what was followed, by graph node."""
    return {
        node: boxes_of(followed.exposure_at(node_in(procedure, node)))
        for node in own_nodes(procedure)
    }


def boxes_of(conditions: State) -> tuple[Box, ...]:
    """Return the boxes for what may hold together: none, one or two, the graver first."""
    hazards = without_covered(hazards_of(conditions))
    if not hazards:
        return ()
    family = hazards[0].family
    first = tuple(hazard for hazard in hazards if hazard.family == family)
    rest = tuple(hazard for hazard in hazards if hazard.family != family)
    return tuple(_box(part) for part in (first, rest) if part)


def _box(hazards: tuple[Hazard, ...]) -> Box:
    return Box(
        signal=max(hazard.signal for hazard in hazards),
        hazards=tuple(hazard.id for hazard in hazards),
    )
