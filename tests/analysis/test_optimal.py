"""The quickest plan: what it may and may not do."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.analysis.guard import Guard
from pullcord.analysis.optimal import Optimum, find_optimum
from pullcord.analysis.plan import Ask, Plan
from pullcord.analysis.pose import read_problem
from pullcord.analysis.table import without_presumptions
from pullcord.model.procedure import Procedure
from tests.analysis.making import chain, make_procedure, procedures, read_all, sorting_trees


def optimum_of(steps: dict[str, Any], causes: dict[str, Any], **more: Any) -> Optimum:
    """Return the best plan for a procedure."""
    tree, table, odds = read_all(make_procedure(steps, causes))
    return find_optimum(read_problem(tree, table, odds), **more)


def first_of(plan: Plan | None) -> tuple[str, ...]:
    """Return what a plan begins with: actions and the first check."""
    assert isinstance(plan, Ask)
    return (*plan.first, plan.check)


def step(minutes: float, bad: str, good: str, **more: Any) -> dict[str, Any]:
    """Return a check with two answers."""
    return {"ask": "?", "minutes": minutes, "answers": {"bad": bad, "good": good}, **more}


TWO = {"far": step(30, "cause far", "step near"), "near": step(2, "cause near", "done")}
CAUSES = {"far": {"odds": 1}, "near": {"odds": 8}}


def test_a_cheap_and_likely_check_goes_first() -> None:
    """2 + 30 * (1 + 4.5) / 13.5 minutes by hand; the search says that it is proven."""
    found = optimum_of(TWO, CAUSES)
    assert first_of(found.plan) == ("near",)
    assert found.minutes == pytest.approx(2 + 30 * 5.5 / 13.5)
    assert found.is_proven


def test_nothing_is_presumed_when_it_must_be_sure() -> None:
    """Without presumptions a check is not asked where it is unknown what an outcome answers."""
    tree, table, odds = read_all(make_procedure(TWO, CAUSES))
    sure = find_optimum(read_problem(tree, without_presumptions(table), odds))
    assert first_of(sure.plan) == ("far",)


def test_telling_replaces_presuming() -> None:
    """`tells` makes sure what was presumed."""
    near = step(2, "cause near", "done", tells={"good": ["far"]})
    tree, table, odds = read_all(make_procedure({**TWO, "near": near}, CAUSES))
    sure = find_optimum(read_problem(tree, without_presumptions(table), odds))
    assert first_of(sure.plan) == ("near",)


def test_needs_are_respected() -> None:
    """A check that says what it comes after is not asked before that, whatever it would save."""
    found = optimum_of({**TWO, "near": step(2, "cause near", "done", after="far")}, CAUSES)
    assert first_of(found.plan) == ("far",)


COVER = {
    "far": step(30, "cause far", "step cover-off"),
    "cover-off": {"minutes": 3, "then": "step near"},
    "near": step(2, "cause near", "done"),
}


def test_an_action_is_a_fence() -> None:
    """Taking the cover off before a check that the author put in front of it is not proposed."""
    assert first_of(optimum_of(COVER, CAUSES).plan) == ("far",)


def test_a_check_that_says_what_it_needs_may_come_after_the_action() -> None:
    """With `after:` nothing, `far` may be asked with the cover off; `near` brings its cover."""
    free = step(30, "cause far", "step cover-off", after=[])
    found = optimum_of({**COVER, "far": free}, CAUSES)
    assert first_of(found.plan) == ("cover-off", "near")
    assert found.minutes == pytest.approx(5 + 30 * 5.5 / 13.5)


def test_a_cover_is_taken_off_once() -> None:
    """Two checks behind it pay for it together: 10, then 1 and 1."""
    steps = {
        "cover-off": {"minutes": 10, "then": "step one"},
        "one": step(1, "cause far", "step two"),
        "two": step(1, "cause near", "done"),
    }
    found = optimum_of(steps, {"far": {"odds": 1}, "near": {"odds": 1}})
    assert found.minutes == pytest.approx(10 + 1 + 2 / 3)


def test_a_guard_is_never_overruled() -> None:
    """An order that the safety analysis refuses is not proposed, even if nothing else is left."""
    asked: list[tuple[str, ...]] = []

    def far_first(order: tuple[str, ...]) -> bool:
        asked.append(order)
        return order[0] == "far"

    guarded = optimum_of(TWO, CAUSES, guard=Guard(far_first, frozenset(TWO)))
    assert first_of(guarded.plan) == ("far",)
    assert ("far", "near", "done") in asked
    never = optimum_of(TWO, CAUSES, guard=Guard(lambda _: False, frozenset(TWO)))
    assert never.plan is None
    assert not never.is_proven


def test_a_search_cut_short_says_so() -> None:
    """Forty causes and a handful of looks: a plan no worse than written, its distance stated."""
    procedure = chain([1 + n % 7 for n in range(40)], [3 + n * n % 11 for n in range(40)])
    tree, table, odds = read_all(procedure)
    problem = read_problem(tree, table, odds)
    short, whole = find_optimum(problem, looks=1), find_optimum(problem)
    assert whole.is_proven
    assert short.at_least <= whole.minutes <= short.minutes + 1e-9


def test_the_same_procedure_gives_the_same_plan() -> None:
    """No clock and no order of sets decides."""
    assert optimum_of(COVER, CAUSES) == optimum_of(COVER, CAUSES)


def test_a_missing_tool_leaves_out_its_checks() -> None:
    """What can no longer be told apart is taken as one outcome."""
    tree, table, odds = read_all(make_procedure(TWO, CAUSES))
    problem = read_problem(tree, table, odds, undoable={"near"})
    assert problem.outcomes == (("cause:far",), ("cause:near", "done"))
    assert find_optimum(problem).minutes == pytest.approx(30)


@given(st.one_of(procedures(), sorting_trees()), st.data())
@settings(max_examples=60, deadline=None, print_blob=True)
def test_no_plan_goes_past_its_guard(procedure: Procedure, data: st.DataObject) -> None:
    """Whatever pairs of steps must not follow one another, no walk of the plan does both so."""
    names = sorted(procedure.steps)
    pairs = st.tuples(st.sampled_from(names), st.sampled_from(names))
    barred = data.draw(st.sets(pairs, max_size=4))

    def is_allowed(order: tuple[str, ...]) -> bool:
        return not any(pair in barred for pair in combinations(order, 2))

    tree, table, odds = read_all(procedure)
    guard = Guard(is_allowed, frozenset(names))
    plan = find_optimum(read_problem(tree, table, odds), guard, looks=500).plan
    assert plan is None or all(map(is_allowed, orders_of(plan)))


def orders_of(plan: Plan) -> Iterator[tuple[str, ...]]:
    """Yield the steps of every walk of a plan, in order."""
    if isinstance(plan, Ask):
        for _, onward in plan.answers:
            for order in orders_of(onward):
                yield (*plan.first, plan.check, *order)
    else:
        yield plan.then
