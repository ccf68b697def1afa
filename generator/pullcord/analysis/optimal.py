"""The quickest plan: dynamic programming over sets of possible outcomes, with bounds.

A state is the set of outcomes still possible, together with those things done that still make a
difference. Its cost is the least over all checks of the minutes times the probability of being
here, plus the costs of the states after each answer (Garey, Optimal binary identification
procedures, SIAM J. Appl. Math. 23(2), 1972). Each state is examined once and remembered.

Where there are too many states, the search stops after a stated number of looks and tells how far
from the best its plan can be: every state has a lower bound (`floor.py`) as well as the cost of a
plan that is known (to begin with, the author's), and what can still gain most is examined next, as
in searching and/or graphs with admissible heuristics (Pattipati and Alexandridis, Application of
heuristic search and information theory to sequential fault diagnosis, IEEE Trans. SMC 20(4), 1990).
No clock decides, so the same procedure gives the same plan everywhere.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from pullcord.analysis.guard import Guard
from pullcord.analysis.plan import Ask, Found, Plan
from pullcord.analysis.problem import Problem
from pullcord.analysis.search import Early, Search
from pullcord.analysis.states import Option, State, tail_of

DEFAULT_LOOKS = 20_000
"""How many times a question may be looked at in a state: a good half second.

That always suffices for 10 outcomes and 19 checks (each in at most 2 to the 10 sets), where no
actions or needs multiply the states; larger problems are mostly proven too, thanks to the bounds.
"""


@dataclass(frozen=True)
class Optimum:
    """The best plan found."""

    plan: Plan | None
    """None when no allowed plan was found."""
    minutes: float
    """Its mean minutes to an answer; infinite without a plan."""
    at_least: float
    """No plan can need fewer minutes on average."""
    looks: int
    """How many times a question was looked at in a state."""

    @property
    def is_proven(self) -> bool:
        """Say whether no plan is quicker."""
        return self.minutes < inf and self.minutes - self.at_least <= 1e-6


def find_optimum(
    problem: Problem,
    guard: Guard | None = None,
    looks: int = DEFAULT_LOOKS,
    early: Sequence[Early] = (),
) -> Optimum:
    """Return the quickest plan found within so many looks, and what no plan can beat.

    `early` are changes known to be good, (check, check to ask it before), to begin from.
    """
    search = Search(problem, guard, looks, early)
    root = search.run()
    tails = sum(map(float.__mul__, problem.shares, problem.least_tails))
    return Optimum(
        plan=_plan(problem, root),
        minutes=root.upper + tails,
        at_least=root.lower + tails,
        looks=search.looks,
    )


def _plan(problem: Problem, state: State) -> Plan | None:
    if state.upper == inf:
        return None
    if state.is_settled:
        place = state.possible.bit_length() - 1
        tail = tail_of(problem, state)
        return Found(problem.outcomes[place], tail, problem.minutes(tail))
    best = min(state.options or (), key=Option.upper)
    onward = [(answer, _plan(problem, after)) for answer, after in best.after]
    return Ask(
        check=best.question.name,
        first=best.acts,
        minutes=best.minutes,
        answers=tuple((answer, plan) for answer, plan in onward if plan is not None),
    )
