"""The states of a search, made and bounded when they are first come to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import inf

from pullcord.analysis.bounds import best_rates, spend
from pullcord.analysis.floor import long_walk
from pullcord.analysis.guard import Guard
from pullcord.analysis.needs import START, Came, Onward
from pullcord.analysis.problem import Problem, Question, is_told_apart
from pullcord.analysis.states import Option, State, lead_in_of, tail_of
from pullcord.analysis.weigh import Scales, Sums, uncertainty

Key = tuple[int, int, tuple[str, ...], tuple[Onward, ...]]


class Space:
    """Every state a problem has been found to have, and what is known of sets of outcomes."""

    def __init__(self, problem: Problem, guard: Guard | None) -> None:
        """Begin with no states."""
        self._problem = problem
        self._guard = guard
        self._scales = Scales(problem)
        self._rates = best_rates((q.minutes, len(q.answers)) for q in problem.questions)
        self._states: dict[Key, State] = {}
        self._useful: dict[int, tuple[Question, ...]] = {}
        self._matter: dict[int, int] = {}
        self._followed: dict[tuple[int, Came], tuple[Onward, ...]] = {}

    def start(self) -> State:
        """Return the state in which everything is possible and nothing has been done."""
        return self._state(self._problem.everything, 0, (), START)

    def floor(self, state: State, options: Sequence[Option], blocked: Sequence[Question]) -> float:
        """Return the best lower bound that follows from what can be asked in a state."""
        questions = [*(option.question for option in options), *blocked]
        rates = best_rates((question.minutes, len(question.answers)) for question in questions)
        leaving = [(option.question.minutes, option.leaving()) for option in options]
        leaving += [(question.minutes, self._leaving(state, question)) for question in blocked]
        largest = self._scales.largest(state.possible, state.done)
        walk = long_walk(state.sums[0], largest, leaving)
        return max(state.lower, _information(state.sums, rates), walk)

    def has_lead_ins(self, possible: int, useful: tuple[Question, ...]) -> bool:
        """Say whether what a question or an end costs may depend on what came before it."""
        if any(question.lead_in for question in useful):
            return True
        return any(tail for i, tail in enumerate(self._problem.tails) if possible >> i & 1)

    def useful_in(self, possible: int, among: tuple[Question, ...] = ()) -> tuple[Question, ...]:
        """Return the questions that not all of the possible outcomes answer alike.

        Those of a smaller set are among those of a larger one.
        """
        known = self._useful.get(possible)
        if known is None:
            asked = among or self._problem.questions
            known = self._useful[possible] = tuple(q for q in asked if q.splits(possible))
        return known

    def option(self, state: State, question: Question) -> Option | None:
        """Return what asking a question leads to; None when it cannot be asked now."""
        acts = self._problem.acts_for(question, state.possible, state.done)
        if acts is None or (question.loose and question.mark & state.done):
            return None
        lead_in = lead_in_of(state, question)
        names = (*(act.name for act in acts), *lead_in)
        order = self._order_after(state, (*names, question.name))
        if order is None:
            return None
        minutes = question.minutes + (self._problem.minutes(names) if names else 0.0)
        done = state.done | question.mark | question.heard
        if names:
            done |= self._problem.bits(names)
        after = tuple(
            (answer, self._state(part, done, order, (question.name, answer), state))
            for answer, mask in question.answers
            if (part := mask & state.possible)
        )
        return Option(question, names, minutes, minutes * state.sums[0], after)

    def _order_after(self, state: State, names: tuple[str, ...]) -> tuple[str, ...] | None:
        """Return the order after some more steps; None when the guard refuses it."""
        if self._guard is None:
            return state.order
        is_fine = self._guard.allows_more(state.order, names)
        return self._guard.extended(state.order, names) if is_fine else None

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
        followed = self._shorter(possible, came) if self._problem.has_lead_ins else ()
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
            for node, acts in self.written_next(possible, came):
                if self._is_shorter(possible, node, acts, best.get(node)):
                    best[node] = acts
            known = self._followed[key] = tuple(best.items())
        return known

    def _is_shorter(
        self, possible: int, node: str, acts: tuple[str, ...], other: tuple[str, ...] | None
    ) -> bool:
        """Say whether a lead-in as written is worth remembering."""
        problem = self._problem
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

    def written_next(
        self, possible: int, came: Came, acts: tuple[str, ...] = ()
    ) -> Iterator[Onward]:
        """Yield the next check that tells anything, or the end, as the author wrote it.

        Checks that tell nothing are passed over, but what is done on the way is done.
        """
        onward = self._problem.onward.get(came)
        if onward is None:
            return
        node, more = onward
        acts = (*acts, *more)
        question = self._problem.named.get(node.removeprefix("step:"))
        if question is None or question.splits(possible):
            yield node, acts if question is None else self._problem.lead_in_among(question, acts)
            return
        for answer in question.given_by_all(possible):
            yield from self.written_next(possible, (question.name, answer), acts)

    def _matter_in(self, possible: int, above: State | None) -> int:
        """Return the mask of things done that can matter while these outcomes are possible."""
        known = self._matter.get(possible)
        if known is None:
            known = self._problem.loose_marks(possible)
            among = self.useful_in(above.possible) if above else ()
            for question in self.useful_in(possible, among):
                known |= question.needs | question.fence
            self._matter[possible] = known
        return known

    def _is_dead_end(self, state: State) -> bool:
        """Say whether actions already done forbid telling the outcomes apart."""
        fenced = state.done & self._problem.fences
        if not fenced:
            return False
        left = [q for q in self.useful_in(state.possible) if not q.fence & fenced]
        return any(
            not is_told_apart(left, place, state.possible)
            for place in range(state.possible.bit_length())
            if state.possible >> place & 1
        )

    def _end(self, state: State) -> float:
        """Return the cost of the tail, beyond the shortest; infinite when the guard refuses it."""
        place = state.possible.bit_length() - 1
        tail = tail_of(self._problem, state)
        outcome = self._problem.outcomes[place][0]
        if self._guard is not None and not self._guard.allows_end(state.order, tail, outcome):
            return inf
        return state.sums[0] * (self._problem.minutes(tail) - self._problem.least_tails[place])

    def _leaving(self, state: State, question: Question) -> float:
        """Return the probability of all but the likeliest answer, of outcomes that are known."""
        masks = [mask & state.possible & question.known for _, mask in question.answers]
        asked = state.done | question.heard
        weights = [self._scales.weigh(mask, asked)[0] for mask in masks]
        return sum(weights) - max(weights)


def _information(sums: Sums, rates: Sequence[tuple[float, float]]) -> float:
    mass = sums[0]
    return mass * spend(uncertainty(sums) / mass, rates) if mass else 0.0
