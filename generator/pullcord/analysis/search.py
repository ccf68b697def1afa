"""The search behind `optimal.py`: which state is examined next, and what can be asked in it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import inf

from pullcord.analysis.guard import Guard
from pullcord.analysis.needs import START, Came
from pullcord.analysis.problem import Problem
from pullcord.analysis.space import Space
from pullcord.analysis.states import (
    CLOSE,
    Option,
    State,
    first_of_run,
    settle,
    without_dearer_twins,
)
from pullcord.analysis.weigh import uncertainty

Early = tuple[str, str]
"""A check, and the check before which to try asking it."""


class Search:
    """One search; `run` it once."""

    def __init__(
        self, problem: Problem, guard: Guard | None, most_looks: int, early: Sequence[Early] = ()
    ) -> None:
        """Prepare a search in which a question may be looked at so many times in a state."""
        self.looks = 0
        self._problem = problem
        self._guard = guard
        self._most_looks = most_looks
        self._early = early
        self._space = Space(problem, guard)

    def run(self) -> State:
        """Search until the bounds meet or the looks are used up; return the first state."""
        root = self._space.start()
        self._complete(root)
        for early in (None, *self._early):
            self._follow_author(root, START, early, set())
        while root.gap > CLOSE and self.looks < self._most_looks:
            self._improve(root)
        return root

    def _follow_author(
        self, state: State, came: Came, early: Early | None, seen: set[tuple[int, str]]
    ) -> None:
        """Take over the plan the author wrote, without checks whose answer is known already.

        With `early`, one check is asked before another; after that all is as written again.
        """
        if state.is_settled:
            return
        for node, _ in self._space.written_next(state.possible, came):
            if (id(state), node) in seen:
                continue
            seen.add((id(state), node))
            self._examine(state)
            is_here = early is not None and node == f"step:{early[1]}"
            name = early[0] if early and is_here else node.removeprefix("step:")
            for answer, after in _after(state, name):
                onward = came if is_here else (name, answer)
                self._follow_author(after, onward, None if is_here else early, seen)
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
            self._follow_author(state, START, None, set())

    def _examine(self, state: State) -> None:
        """List what can be asked in a state, if that has not been done."""
        if state.options is not None or state.is_settled:
            return
        useful = self._space.useful_in(state.possible)
        self.looks += len(useful)
        found = [(question, self._space.option(state, question)) for question in useful]
        options = without_dearer_twins([option for _, option in found if option is not None])
        blocked = [question for question, option in found if option is None]
        options.sort(key=lambda option: -_gain(state, option))
        state.options = options
        state.lower = self._space.floor(state, options, blocked)
        if not options:
            state.lower = inf
        elif self._guard is None and not self._space.has_lead_ins(state.possible, useful):
            state.run = first_of_run(state, options, blocked)


def _after(state: State, name: str) -> Iterator[tuple[str, State]]:
    """Yield each answer of a question that can be asked, and the state it leads to."""
    for option in state.options or ():
        if option.question.name == name:
            yield from option.after


def _gain(state: State, option: Option) -> float:
    """Return bits per minute."""
    left = sum(uncertainty(after.sums) for _, after in option.after)
    gained = uncertainty(state.sums) - left
    return gained / option.cost if option.cost else inf
