"""States of the search for the quickest plan, and what can be asked in them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from pullcord.analysis.needs import Onward
from pullcord.analysis.order import quickest_to_tell_apart
from pullcord.analysis.problem import Problem, Question
from pullcord.analysis.weigh import Sums

CLOSE = 1e-9
"""Bounds nearer than this are equal but for rounding."""


@dataclass(slots=True, eq=False)
class State:
    """A set of outcomes still possible, after some things were done."""

    possible: int
    done: int
    """Those things done that can still make a difference."""
    order: tuple[str, ...]
    """What a guard needs to know of the order so far."""
    followed: tuple[Onward, ...]
    """What comes next as written, with its lead-in, where that is shorter than elsewhere."""
    sums: Sums
    lower: float
    """Minutes times probability from here on that no plan can go below."""
    upper: float = inf
    """The same for the best plan known."""
    options: list[Option] | None = None
    """What can be asked; None until the state has been examined."""
    run: Option | None = None
    """The option that is known to be best because all are a run (`first_of_run`)."""

    @property
    def gap(self) -> float:
        """Return how much the bounds leave open."""
        return 0.0 if self.lower == inf else self.upper - self.lower

    @property
    def is_settled(self) -> bool:
        """Say whether a single outcome is left."""
        return not self.possible & (self.possible - 1)


@dataclass(slots=True, eq=False)
class Option:
    """A question that can be asked in a state."""

    question: Question
    acts: tuple[str, ...]
    """Actions to be done before it."""
    minutes: float
    """Its own and those of the actions."""
    cost: float
    """Minutes times the probability of the state."""
    after: tuple[tuple[str, State], ...]
    """Each answer that can be given, and the state it leads to."""

    def lower(self) -> float:
        """Return the lower bound of asking this."""
        total = self.cost
        for _, state in self.after:
            total += state.lower
        return total

    def upper(self) -> float:
        """Return the cost of asking this and going on as well as is known."""
        total = self.cost
        for _, state in self.after:
            total += state.upper
        return total

    def leaving(self) -> float:
        """Return the probability of all but the likeliest answer."""
        weights = [state.sums[0] for _, state in self.after]
        return sum(weights) - max(weights)


def lead_in_of(state: State, question: Question) -> tuple[str, ...]:
    """Return the actions on the way to a question, besides those it needs."""
    node = f"step:{question.name}"
    return next((acts for to, acts in state.followed if to == node), question.lead_in)


def tail_of(problem: Problem, state: State) -> tuple[str, ...]:
    """Return the actions still to be done once a single outcome is left."""
    place = state.possible.bit_length() - 1
    return next((acts for _, acts in state.followed), problem.tails[place])


def settle(state: State) -> None:
    """Take over what the options now say, and forget those that cannot be the best."""
    if state.options is None:
        return
    options = state.options
    bounds = [(option.lower(), option) for option in options]
    lowest = min((lower for lower, _ in bounds), default=inf)
    state.lower = max(state.lower, state.run.lower() if state.run else lowest)
    state.upper = min(state.upper, min((option.upper() for option in options), default=inf))
    if state.gap <= CLOSE:
        state.lower = state.upper
    state.options = [option for lower, option in bounds if lower <= state.upper + CLOSE]


def without_dearer_twins(options: Sequence[Option]) -> list[Option]:
    """Leave out options that lead to the same states as a cheaper one."""
    cheapest: dict[frozenset[int], Option] = {}
    for option in options:
        key = frozenset(id(after) for _, after in option.after)
        if key not in cheapest or option.cost < cheapest[key].cost:
            cheapest[key] = option
    return list(cheapest.values())


def first_of_run(
    state: State, options: Sequence[Option], blocked: Sequence[Question]
) -> Option | None:
    """Return the option to take when all are a run of independent checks, else None.

    Each sends away outcomes of its own, and everything else gives the answer that goes on. What it
    costs to go on with those sent away, or with those that no check of the run knows, is then the
    same in any order, so the ratio rule of `order.py` holds. Questions that cannot be asked yet
    must not become possible before the run has sent away all its outcomes.
    """
    sent = [_sent_away(state, option) for option in options]
    together = sum(sent)
    if not all(sent) or together.bit_count() < sum(map(int.bit_count, sent)):
        return None
    if any(not mask & ~question.known for question in blocked for mask in sent):
        return None
    mass = state.sums[0]
    pairs = [(mass - _going_on(option).sums[0], option.minutes) for option in options]
    is_all = together == state.possible
    droppable = [i for i, option in enumerate(options) if is_all and len(option.after) == 2]
    order, _ = quickest_to_tell_apart(mass, pairs, droppable)
    return options[order[0]]


def _sent_away(state: State, option: Option) -> int:
    """Return the outcomes that do not go on with the most of them; 0 if asking changes more."""
    after = [following for _, following in option.after]
    is_split = sum(each.possible.bit_count() for each in after) == state.possible.bit_count()
    changes_more = bool(option.acts) or any(each.done & ~state.done for each in after)
    if changes_more or not is_split:
        return 0
    return state.possible & ~_going_on(option).possible


def _going_on(option: Option) -> State:
    return max((after for _, after in option.after), key=lambda each: each.possible.bit_count())
