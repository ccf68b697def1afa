"""Whether the steps of a procedure could be done in another order and still be safe.

Whoever proposes an order asks here first. The same conflicts and loose ends count as in the
procedure itself; an order begins at a machine of unknown history, like the procedure.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache

from pullcord.model.action import Action
from pullcord.model.procedure import Procedure
from pullcord.safety.effects import Effects, effects_of, state_during, state_leaving
from pullcord.safety.ends import LOOSE_ENDS
from pullcord.safety.forbidden import FORBIDDEN
from pullcord.safety.vocabulary import AT_START, State

_CONFLICTS = tuple(conflict for conflicts in FORBIDDEN.values() for conflict in conflicts)


def steps_that_matter(procedure: Procedure) -> frozenset[str]:
    """Return the steps whose place in an order can make it unsafe: all that declare anything."""
    return frozenset(
        name for name, step in procedure.steps.items() if effects_of(step) != Effects()
    )


def is_safe_order(procedure: Procedure, order: Sequence[str]) -> bool:
    """Return whether doing steps in this order, from a fresh start, is in no conflict.

    `order` holds step names. Its last item may be the graph node of an outcome, `cause:NAME`,
    `done` or `procedure:NAME`: then the remedy counts too, and nothing may be left behind.
    Raises KeyError for a step or cause the procedure does not have.
    """
    return read_safe_orders(procedure)(tuple(order))


def read_safe_orders(procedure: Procedure) -> Callable[[tuple[str, ...]], bool]:
    """Return `is_safe_order` for one procedure, for whoever asks of many orders.

    Orders begin alike, so what holds after a beginning is worked out once and remembered.
    """

    @cache
    def go_on(entering: State, name: str) -> State | None:
        effects = effects_of(_action(procedure, name))
        if _is_in_conflict(entering, effects):
            return None
        return state_leaving(entering, effects)

    @cache
    def state_after(order: tuple[str, ...]) -> State | None:
        state: State | None = AT_START
        for name in order:
            state = None if state is None else go_on(state, name)
        return state

    def is_safe(order: tuple[str, ...]) -> bool:
        state = state_after(order)
        if state is None:
            return False
        return not (order and _is_outcome(order[-1])) or state.isdisjoint(LOOSE_ENDS)

    return is_safe


def _is_in_conflict(entering: State, effects: Effects) -> bool:
    during = state_during(entering, effects)
    return any(conflict.is_met(during, effects) for conflict in _CONFLICTS)


def _is_outcome(name: str) -> bool:
    # A step's name has no colon.
    return name == "done" or ":" in name


def _action(procedure: Procedure, name: str) -> Action:
    kind, _, own = name.partition(":")
    if kind == "cause":
        return procedure.causes[own]
    if _is_outcome(name) and name not in procedure.steps:
        return Action()
    return procedure.steps[name]
