"""What one step, or one remedy, does: its verbs folded into one change of the state."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from pullcord.model.action import Action
from pullcord.safety.vocabulary import AT_START, ROWS, Row, State

_FIELDS = tuple((row.verb.replace("-", "_"), row) for row in ROWS)
_VERBS = frozenset(field for field, _ in _FIELDS)


@dataclass(frozen=True)
class Effects:
    """The change one step makes. The sets hold condition identifiers."""

    begins: State = frozenset()
    """Holds when the step is over."""
    ends: State = frozenset()
    """Does not hold when the step is over."""
    meets: State = frozenset()
    """Holds at some moment of the step because the step brings it about."""
    touches: State = frozenset()
    """What the step puts right, and so meets if it was there: hands are on it all the same."""


NO_EFFECTS = Effects()


def rows_of(action: Action) -> Sequence[Row]:
    """Return the vocabulary's rows for what an action declares, in the order they work."""
    declared = action.model_fields_set & _VERBS
    if not declared:
        return ()
    return [
        row for field, row in _FIELDS if field in declared and row.thing in getattr(action, field)
    ]


def effects_of(action: Action) -> Effects:
    """Fold what an action declares into one change."""
    rows = rows_of(action)
    return _folded(rows) if rows else NO_EFFECTS


def _folded(rows: Iterable[Row]) -> Effects:
    begins: set[str] = set()
    ends: set[str] = set()
    meets: set[str] = set()
    touches: set[str] = set()
    for row in rows:
        begins.difference_update(row.ends)
        ends.update(row.ends)
        begins.update(row.begins)
        ends.difference_update(row.begins)
        meets.update(row.meets, row.begins)
        touches.update(row.ends)
    return Effects(
        frozenset(begins), frozenset(ends), frozenset(meets), frozenset(touches) - AT_START
    )


def state_during(entering: State, effects: Effects) -> State:
    """Return what may hold at some moment of a step that is entered in a state."""
    return entering | effects.meets


def state_leaving(entering: State, effects: Effects) -> State:
    """Return what holds when a step that was entered in a state is over."""
    if not effects.ends and not effects.begins:
        return entering
    return (entering - effects.ends) | effects.begins


def exposure(entering: State, effects: Effects) -> State:
    """Return what a person may meet in a step: what its caution boxes must speak of."""
    return state_during(entering, effects) | effects.touches


def key_that_meets(action: Action, conditions: State) -> str | None:
    """Return the first key by which an action brings one of the conditions about."""
    for row in rows_of(action):
        if not conditions.isdisjoint((*row.begins, *row.meets)):
            return row.verb
    return None
