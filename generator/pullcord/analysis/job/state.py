"""How a machine stands after each entry: what steps, remedies and entries do, folded together.

What is declared by the step an entry names, by the remedy of the cause it says was put right, and
by the entry itself counts in this order, so that what somebody wrote down has the last word.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import get_args

from pullcord.analysis.job.given import Given
from pullcord.analysis.job.noted import Noted
from pullcord.model.action import Action, Fitting
from pullcord.safety.effects import effects_of, state_leaving
from pullcord.safety.vocabulary import AT_START, State

FITTINGS: tuple[str, ...] = get_args(Fitting)
"""What can be fitted for testing; each is a condition of the same name."""

PETROL = "petrol"
PASSES = frozenset({"hot-parts"})
"""What is over by itself on the next day."""


@dataclass(frozen=True)
class Standing:
    """How the machine stands after an entry."""

    state: State = AT_START
    """Conditions that hold when the entry is over."""
    at_proof: State = AT_START
    """Conditions under which its answer was got: what it put on and took off again counts too."""
    drained: Mapping[str, int] = field(default_factory=dict)
    """Liquids that are out, each with the position of the entry that let it out."""
    filled: frozenset[str] = frozenset()
    """Liquids of which the log says last that they were filled in."""
    since: Mapping[str, int] = field(default_factory=dict)
    """By condition: the position of the entry it has held since. Those at the start are not in."""

    @property
    def fitted(self) -> tuple[str, ...]:
        """Return what is fitted for testing."""
        return tuple(each for each in FITTINGS if each in self.state)


def standings(given: Given) -> Iterator[Standing]:
    """Yield how the machine stands after each entry, the oldest first."""
    standing, day = Standing(), given.job.taken_in
    for note in given.notes:
        if note.day != day:
            standing, day = _next_day(standing), note.day
        standing = _after(standing, note)
        yield standing


def last_standing(given: Given) -> Standing:
    """Return how the machine stands after the last entry."""
    standing = Standing()
    for each in standings(given):
        standing = each
    return standing


def _actions(note: Noted) -> Iterator[Action]:
    if note.step is not None:
        yield note.step
    causes = note.procedure.causes if note.procedure else {}
    cause = causes.get(note.entry.cause) if note.entry.cause else None
    if cause is not None and note.is_remedied:
        yield cause
    yield note.entry


def _next_day(before: Standing) -> Standing:
    since = {each: place for each, place in before.since.items() if each not in PASSES}
    return replace(before, state=before.state - PASSES, since=since)


def _after(before: Standing, note: Noted) -> Standing:
    state, met = before.state, frozenset[str]()
    for action in _actions(note):
        effects = effects_of(action)
        state = state_leaving(state, effects)
        met |= effects.meets
    entry, place = note.entry, note.place
    drained = {liquid: at for liquid, at in before.drained.items() if liquid not in entry.fills}
    if "running" in met:
        drained.pop(PETROL, None)  # It ran, so there is petrol in it, whatever nobody wrote.
    drained |= {liquid: before.drained.get(liquid, place) for liquid in entry.drains}
    return Standing(
        state=state,
        at_proof=state | met,
        drained=drained,
        filled=(before.filled | set(entry.fills)) - set(entry.drains),
        since={each: before.since.get(each, place) for each in sorted(state - AT_START)},
    )
