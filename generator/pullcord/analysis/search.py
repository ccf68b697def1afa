"""The search behind `optimal.py`: which state is examined next, and what can be asked in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import inf

from pullcord.analysis.bounds import best_rates, spend
from pullcord.analysis.floor import long_walk
from pullcord.analysis.guard import Guard
from pullcord.analysis.problem import Problem, Question, is_told_apart
from pullcord.analysis.states import (
    CLOSE,
    Option,
    State,
    first_of_run,
    settle,
    without_dearer_twins,
)
from pullcord.analysis.weigh import Scales, Sums, uncertainty


@dataclass
class Search:
    """One search; `run` it once."""

    problem: Problem
    guard: Guard | None
    most_looks: int
    """How many times a question may be looked at in a state."""
    looks: int = 0
    _states: dict[tuple[int, int, tuple[str, ...]], State] = field(default_factory=dict)
    _useful: dict[int, tuple[Question, ...]] = field(default_factory=dict)
    _matter: dict[int, int] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Prepare what every state needs."""
        self._scales = Scales(self.problem)
        self._rates = best_rates((q.minutes, len(q.answers)) for q in self.problem.questions)

    def run(self) -> State:
        """Search until the bounds meet or the looks are used up; return the first state."""
        root = self._state(self.problem.everything, 0, ())
        self._complete(root)
        self._follow_author(root, self.problem.first, set())
        while root.gap > CLOSE and self.looks < self.most_looks:
            self._improve(root)
        return root

    def _follow_author(self, state: State, name: str, seen: set[tuple[int, str]]) -> None:
        """Take over the plan the author wrote, without checks whose answer is known already."""
        question = self.problem.named.get(name)
        if state.is_settled or question is None or (id(state), name) in seen:
            return
        seen.add((id(state), name))
        if question.splits(state.possible):
            self._examine(state)
            taken = [option for option in state.options or () if option.question is question]
            ways = [way for option in taken for way in option.after]
        else:
            ways = [(answer, state) for answer in question.given_by_all(state.possible)]
        for answer, after in ways:
            self._follow_author(after, question.onward[answer], seen)
        settle(state)

    def _improve(self, state: State) -> None:
        """Examine the one state below that can still gain most."""
        if state.options is None:
            self._complete(state)
            return
        best = state.run or min(state.options, key=Option.lower)
        weakest = max((after for _, after in best.after), key=lambda after: after.gap)
        if weakest.gap > 0:
            self._improve(weakest)
        settle(state)

    def _complete(self, state: State) -> None:
        """Find some plan from a state: the most bits per minute first, or else the author's."""
        if state.options is not None or state.is_settled:
            return
        self._examine(state)
        for option in [state.run] if state.run else (state.options or [])[:1]:
            for _, after in option.after:
                self._complete(after)
        settle(state)
        if state.upper == inf:
            self._follow_author(state, self.problem.first, set())

    def _examine(self, state: State) -> None:
        """List what can be asked in a state, if that has not been done."""
        if state.options is not None or state.is_settled:
            return
        useful = self._useful_in(state.possible)
        self.looks += len(useful)
        found = [(question, self._option(state, question)) for question in useful]
        options = without_dearer_twins([option for _, option in found if option is not None])
        blocked = [question for question, option in found if option is None]
        options.sort(key=lambda option: -_gain(state, option))
        state.options = options
        rates = best_rates((question.minutes, len(question.answers)) for question in useful)
        state.lower = max(
            state.lower,
            _information(state.sums, rates),
            self._long_walk(state, options, blocked),
        )
        if not options:
            state.lower = inf
        elif self.guard is None:
            state.run = first_of_run(state, options, blocked)

    def _useful_in(self, possible: int, among: tuple[Question, ...] = ()) -> tuple[Question, ...]:
        """Return the questions that not all of the possible outcomes answer alike.

        Those of a smaller set are among those of a larger one.
        """
        known = self._useful.get(possible)
        if known is None:
            asked = among or self.problem.questions
            known = self._useful[possible] = tuple(q for q in asked if q.splits(possible))
        return known

    def _option(self, state: State, question: Question) -> Option | None:
        acts = self.problem.acts_for(question, state.possible, state.done)
        if acts is None or (question.loose and question.mark & state.done):
            return None
        names = tuple(act.name for act in acts)
        order = state.order
        if self.guard is not None:
            order = self.guard.extended(order, (*names, *question.lead_in, question.name))
            if order != state.order and not self.guard.is_allowed(order):
                return None
        minutes, done = question.minutes, state.done | question.mark | question.heard
        for act in acts:
            minutes, done = minutes + act.minutes, done | act.bit
        after = tuple(
            (answer, self._state(mask & state.possible, done, order, state))
            for answer, mask in question.answers
            if mask & state.possible
        )
        return Option(question, names, minutes, minutes * state.sums[0], after)

    def _state(
        self, possible: int, done: int, order: tuple[str, ...], above: State | None = None
    ) -> State:
        """Return the state, made and bounded if it is new."""
        if done:
            done &= self._matter_in(possible, above)
        key = (possible, done, order)
        known = self._states.get(key)
        if known is None:
            sums = self._scales.weigh(possible, done)
            known = State(possible, done, order, sums, lower=_information(sums, self._rates))
            if known.is_settled:
                known.lower = known.upper = self._end(known)
            elif self._is_dead_end(known):
                known.lower = inf
            self._states[key] = known
        return known

    def _matter_in(self, possible: int, above: State | None) -> int:
        """Return the mask of things done that can matter while these outcomes are possible."""
        known = self._matter.get(possible)
        if known is None:
            known = self.problem.loose_marks(possible)
            among = self._useful_in(above.possible) if above else ()
            for question in self._useful_in(possible, among):
                known |= question.needs | question.fence
            self._matter[possible] = known
        return known

    def _is_dead_end(self, state: State) -> bool:
        """Say whether actions already done forbid telling the outcomes apart."""
        fenced = state.done & self.problem.fences
        if not fenced:
            return False
        left = [q for q in self._useful_in(state.possible) if not q.fence & fenced]
        return any(
            not is_told_apart(left, place, state.possible)
            for place in range(state.possible.bit_length())
            if state.possible >> place & 1
        )

    def _end(self, state: State) -> float:
        """Return 0, or infinity when the guard refuses the order that ends here."""
        if self.guard is None:
            return 0.0
        place = state.possible.bit_length() - 1
        whole = self.guard.extended(state.order, self.problem.tails[place])
        return 0.0 if self.guard.is_allowed((*whole, self.problem.outcomes[place][0])) else inf

    def _long_walk(self, state: State, options: list[Option], blocked: list[Question]) -> float:
        leaving = [(option.question.minutes, option.leaving()) for option in options]
        leaving += [(question.minutes, self._leaving(state, question)) for question in blocked]
        largest = self._scales.largest(state.possible, state.done)
        return long_walk(state.sums[0], largest, leaving)

    def _leaving(self, state: State, question: Question) -> float:
        """Return the probability of all but the likeliest answer, of outcomes that are known."""
        masks = [mask & state.possible & question.known for _, mask in question.answers]
        asked = state.done | question.heard
        weights = [self._scales.weigh(mask, asked)[0] for mask in masks]
        return sum(weights) - max(weights)


def _information(sums: Sums, rates: Sequence[tuple[float, float]]) -> float:
    mass = sums[0]
    return mass * spend(uncertainty(sums) / mass, rates) if mass else 0.0


def _gain(state: State, option: Option) -> float:
    """Return bits per minute."""
    left = sum(uncertainty(after.sums) for _, after in option.after)
    gained = uncertainty(state.sums) - left
    return gained / option.cost if option.cost else inf
