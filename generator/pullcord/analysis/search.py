"""The search behind `optimal.py`: which state is examined next, and what can be asked in it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from math import inf

from pullcord.analysis.bounds import best_rates, spend
from pullcord.analysis.floor import long_walk
from pullcord.analysis.guard import Guard
from pullcord.analysis.needs import START, Came, Onward
from pullcord.analysis.problem import Problem, Question, is_told_apart
from pullcord.analysis.states import (
    CLOSE,
    Option,
    State,
    first_of_run,
    lead_in_of,
    settle,
    tail_of,
    without_dearer_twins,
)
from pullcord.analysis.weigh import Scales, Sums, uncertainty

Key = tuple[int, int, tuple[str, ...], tuple[Onward, ...]]


@dataclass
class Search:
    """One search; `run` it once."""

    problem: Problem
    guard: Guard | None
    most_looks: int
    """How many times a question may be looked at in a state."""
    looks: int = 0
    _states: dict[Key, State] = field(default_factory=dict)
    _useful: dict[int, tuple[Question, ...]] = field(default_factory=dict)
    _matter: dict[int, int] = field(default_factory=dict)
    _followed: dict[tuple[int, Came], tuple[Onward, ...]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Prepare what every state needs."""
        self._scales = Scales(self.problem)
        self._rates = best_rates((q.minutes, len(q.answers)) for q in self.problem.questions)

    def run(self) -> State:
        """Search until the bounds meet or the looks are used up; return the first state."""
        root = self._state(self.problem.everything, 0, (), START)
        self._complete(root)
        self._follow_author(root, START, set())
        while root.gap > CLOSE and self.looks < self.most_looks:
            self._improve(root)
        return root

    def _follow_author(self, state: State, came: Came, seen: set[tuple[int, str]]) -> None:
        """Take over the plan the author wrote, without checks whose answer is known already."""
        if state.is_settled:
            return
        for node, _ in self._written_next(state.possible, came):
            question = self.problem.named.get(node.removeprefix("step:"))
            if question is None or (id(state), node) in seen:
                continue
            seen.add((id(state), node))
            self._examine(state)
            for option in state.options or ():
                if option.question is question:
                    for answer, after in option.after:
                        self._follow_author(after, (question.name, answer), seen)
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
            self._follow_author(state, START, set())

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
        elif self.guard is None and not self._has_lead_ins(state.possible, useful):
            state.run = first_of_run(state, options, blocked)

    def _has_lead_ins(self, possible: int, useful: tuple[Question, ...]) -> bool:
        """Say whether what a question or an end costs may depend on what came before it."""
        if any(question.lead_in for question in useful):
            return True
        return any(tail for i, tail in enumerate(self.problem.tails) if possible >> i & 1)

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
        lead_in = lead_in_of(state, question)
        names = (*(act.name for act in acts), *lead_in)
        order = self._order_after(state, (*names, question.name))
        if order is None:
            return None
        minutes = question.minutes + (self.problem.minutes(names) if names else 0.0)
        done = state.done | question.mark | question.heard
        if names:
            done |= self.problem.bits(names)
        after = tuple(
            (answer, self._state(part, done, order, (question.name, answer), state))
            for answer, mask in question.answers
            if (part := mask & state.possible)
        )
        return Option(question, names, minutes, minutes * state.sums[0], after)

    def _order_after(self, state: State, names: tuple[str, ...]) -> tuple[str, ...] | None:
        """Return the order after some more steps; None when the guard refuses it."""
        if self.guard is None:
            return state.order
        is_fine = self.guard.allows_more(state.order, names)
        return self.guard.extended(state.order, names) if is_fine else None

    def _state(
        self,
        possible: int,
        done: int,
        order: tuple[str, ...],
        came: Came,
        above: State | None = None,
    ) -> State:
        """Return the state, made and bounded if it is new."""
        if done:
            done &= self._matter_in(possible, above)
        followed = self._shorter(possible, came) if self.problem.has_lead_ins else ()
        key = (possible, done, order, followed)
        known = self._states.get(key)
        if known is None:
            sums = self._scales.weigh(possible, done)
            lower = _information(sums, self._rates)
            known = self._states[key] = State(possible, done, order, followed, sums, lower)
            if known.is_settled:
                known.lower = known.upper = self._end(known)
            elif self._is_dead_end(known):
                known.lower = inf
        return known

    def _shorter(self, possible: int, came: Came) -> tuple[Onward, ...]:
        """Return what comes next as written, where its lead-in is not what it is elsewhere."""
        key = (possible, came)
        known = self._followed.get(key)
        if known is None:
            best: dict[str, tuple[str, ...]] = {}
            for node, acts in self._written_next(possible, came):
                if self._is_shorter(possible, node, acts, best.get(node)):
                    best[node] = acts
            known = self._followed[key] = tuple(best.items())
        return known

    def _is_shorter(
        self, possible: int, node: str, acts: tuple[str, ...], other: tuple[str, ...] | None
    ) -> bool:
        """Say whether a lead-in as written is worth remembering."""
        problem = self.problem
        question = problem.named.get(node.removeprefix("step:"))
        is_settled = not possible & (possible - 1)
        if question is not None:
            elsewhere = question.lead_in
        elif is_settled and possible >> problem.places.get(node, 0) & 1:
            elsewhere = problem.tails[problem.places[node]]
        else:
            return False
        most = elsewhere if other is None else other
        return acts != elsewhere and problem.minutes(acts) <= problem.minutes(most)

    def _written_next(
        self, possible: int, came: Came, acts: tuple[str, ...] = ()
    ) -> Iterator[Onward]:
        """Yield the next check that tells anything, or the end, as the author wrote it.

        Checks that tell nothing are passed over, but what is done on the way is done.
        """
        onward = self.problem.onward.get(came)
        if onward is None:
            return
        node, more = onward
        acts = (*acts, *more)
        question = self.problem.named.get(node.removeprefix("step:"))
        if question is None or question.splits(possible):
            yield node, acts if question is None else self.problem.lead_in_among(question, acts)
            return
        for answer in question.given_by_all(possible):
            yield from self._written_next(possible, (question.name, answer), acts)

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
        """Return the cost of the tail, beyond the shortest; infinite when the guard refuses it."""
        place = state.possible.bit_length() - 1
        tail = tail_of(self.problem, state)
        outcome = self.problem.outcomes[place][0]
        if self.guard is not None and not self.guard.allows_end(state.order, tail, outcome):
            return inf
        return state.sums[0] * (self.problem.minutes(tail) - self.problem.least_tails[place])

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
