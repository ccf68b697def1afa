"""What would make a procedure quicker: as written, at best, and the one change that wins most."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import islice

from pullcord.analysis.changes import Change, Written, orders_after
from pullcord.analysis.guard import Guard
from pullcord.analysis.plan import Ask, Plan
from pullcord.analysis.sensitivity import Robustness, read_robustness
from pullcord.analysis.table import Origin, Table

MOST_WAYS = 50
"""A change to which more ways than this lead is not held against a guard, and not proposed."""


@dataclass(frozen=True)
class Advice:
    """The one change to a procedure that wins most."""

    change: Change
    minutes_now: float
    """Mean minutes to an answer, as written."""
    minutes_then: float
    """The same after the change."""
    robustness: Robustness
    """How wrong the odds may be before the change saves nothing."""


def first_allowed(
    written: Written,
    changes: Iterable[Change],
    minutes_now: float,
    guard: Guard | None = None,
) -> Advice | None:
    """Return the first of some changes that a guard allows, as advice; None when there is none."""
    for change in changes:
        if guard is None or _is_allowed(written, change, guard):
            return Advice(
                change=change,
                minutes_now=minutes_now,
                minutes_then=minutes_now - change.saves,
                robustness=read_robustness(written.shares, change.saved),
            )
    return None


def presumptions(table: Table, plan: Plan | None) -> tuple[tuple[str, str], ...]:
    """Return each (check, outcome) of which a plan only presumes what the outcome answers."""
    found: dict[tuple[str, str], None] = {}
    for check, possible in _asked(plan):
        for outcome in possible:
            if table[check][outcome].origin is Origin.PRESUMED:
                found[check, outcome] = None
    return tuple(found)


def _asked(plan: Plan | None) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Yield every check of a plan with the outcomes that are possible when it is asked."""
    if isinstance(plan, Ask):
        yield plan.check, tuple(dict.fromkeys(_found(plan)))
        for _, onward in plan.answers:
            yield from _asked(onward)


def _found(plan: Plan) -> Iterator[str]:
    if isinstance(plan, Ask):
        for _, onward in plan.answers:
            yield from _found(onward)
    else:
        yield from plan.outcomes


def _is_allowed(written: Written, change: Change, guard: Guard) -> bool:
    """Say whether every order the changed procedure can lead to is allowed."""
    ways = list(islice(_ways_to(written, change.place), MOST_WAYS + 1))
    return len(ways) <= MOST_WAYS and all(
        guard.allows_end((), (*way, *order[:-1]), order[-1])
        for order in orders_after(written, change)
        for way in ways
    )


def _ways_to(written: Written, step: str) -> Iterator[tuple[str, ...]]:
    """Yield the steps before a step, for each way that leads to it."""
    above = written.above[f"step:{step}"]
    if not above:
        yield ()
    for name in above:
        for way in _ways_to(written, name):
            yield (*way, name)
