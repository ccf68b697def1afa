"""A plan: which check to ask first, and which next after each answer."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from pullcord.analysis.problem import Problem
from pullcord.analysis.telling import Group


@dataclass(frozen=True)
class Found:
    """The end of a plan: what is wrong is known."""

    outcomes: Group
    """A single outcome, or those that no check tells apart."""
    then: tuple[str, ...] = ()
    """Actions still to be done."""
    minutes: float = 0.0
    """Of those actions."""


@dataclass(frozen=True)
class Ask:
    """One check of a plan, and how it goes on."""

    check: str
    first: tuple[str, ...]
    """Actions to be done just before it, in order."""
    minutes: float
    """Of the check and of those actions."""
    answers: tuple[tuple[str, Plan], ...]
    """How it goes on after each answer that can still be given."""


Plan = Ask | Found


@dataclass(frozen=True)
class PlanArrival:
    """One way a plan can end."""

    outcomes: Group
    minutes: float
    checks: int
    share: float


def walk_plan(problem: Problem, plan: Plan) -> tuple[PlanArrival, ...]:
    """Return every end of a plan with its minutes, checks and probability, the quickest first."""
    mass = dict(enumerate(problem.shares))
    ends = _ends(problem, plan, mass, 0.0, 0)
    return tuple(sorted(ends, key=lambda end: (end.minutes, end.checks, end.outcomes)))


def minutes_by_outcome(arrivals: tuple[PlanArrival, ...]) -> dict[Group, float]:
    """Return the mean minutes to each group of outcomes."""
    shares: dict[Group, float] = {}
    spent: dict[Group, float] = {}
    for end in arrivals:
        shares[end.outcomes] = shares.get(end.outcomes, 0.0) + end.share
        spent[end.outcomes] = spent.get(end.outcomes, 0.0) + end.share * end.minutes
    return {name: spent[name] / share for name, share in shares.items() if share}


def _ends(
    problem: Problem, plan: Plan, mass: dict[int, float], minutes: float, checks: int
) -> Iterator[PlanArrival]:
    if isinstance(plan, Found):
        place = problem.outcomes.index(plan.outcomes)
        yield PlanArrival(plan.outcomes, minutes + plan.minutes, checks, mass[place])
        return
    question = next(q for q in problem.questions if q.name == plan.check)
    masks = dict(question.answers)
    for answer, onward in plan.answers:
        left = {
            place: share / question.loose.get(1 << place, 1)
            for place, share in mass.items()
            if masks[answer] >> place & 1
        }
        yield from _ends(problem, onward, left, minutes + plan.minutes, checks + 1)
