"""What must be seen to before one starts, and before one walks away, at whatever step one stops."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from pullcord.model.procedure import Library, Procedure
from pullcord.safety.flow import Followed, follow
from pullcord.safety.hazards import HAZARDS, hazards_of
from pullcord.safety.scope import node_in, own_nodes, scope_before
from pullcord.safety.vocabulary import CONDITIONS, State


@dataclass(frozen=True)
class BeforeStart:
    """What someone should know and have at hand before the first step."""

    hazards: tuple[str, ...]
    """Hazard identifiers, gravest first: everything the procedure may meet."""
    wear: tuple[str, ...]
    """Protective equipment, by the names of its texts."""
    ready: tuple[str, ...]
    """What must be in place: extinguisher, fresh air, stands..., by the names of its texts."""


def before_you_start(procedure: Procedure, library: Library | None = None) -> BeforeStart:
    """Return the union of what all steps and remedies may meet, and what that asks for."""
    return start_within(follow(scope_before(procedure, library)), procedure)


def start_within(followed: Followed, procedure: Procedure) -> BeforeStart:
    """Return what stands before a procedure that is part of what was followed."""
    called = {
        hazard.id
        for node in own_nodes(procedure)
        for hazard in hazards_of(followed.exposure_at(node_in(procedure, node)))
    }
    met = [hazard for hazard in HAZARDS.values() if hazard.id in called]
    return BeforeStart(
        hazards=tuple(hazard.id for hazard in met),
        wear=_once(name for hazard in met for name in hazard.wear),
        ready=_once(name for hazard in met for name in hazard.ready),
    )


def before_you_walk_away(
    procedure: Procedure, library: Library | None = None
) -> Mapping[str, tuple[str, ...]]:
    """Return, for every step and cause, what may have to be seen to when one stops after it.

    Items are condition identifiers, in the order in which they should be seen to; () when nothing
    is left. A node is named as in the procedure's own graph, such as `step:plug`.
    """
    return walk_away_within(follow(scope_before(procedure, library)), procedure)


def walk_away_within(followed: Followed, procedure: Procedure) -> Mapping[str, tuple[str, ...]]:
    """Return the same for a procedure that is part of what was followed."""
    return {
        node: _items(followed.leaving(node_in(procedure, node))) for node in own_nodes(procedure)
    }


def _items(state: State) -> tuple[str, ...]:
    return tuple(each.id for each in CONDITIONS.values() if each.reminds and each.id in state)


def _once(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))
