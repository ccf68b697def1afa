"""The one change that wins most, and what it rests on."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings

from pullcord.analysis.advice import first_allowed, presumptions
from pullcord.analysis.arrivals import read_arrivals
from pullcord.analysis.changes import Change, Written, orders_after, read_written, saving_changes
from pullcord.analysis.cost import read_cost
from pullcord.analysis.guard import Guard
from pullcord.analysis.optimal import find_optimum
from pullcord.analysis.pose import read_problem
from pullcord.model.procedure import Procedure
from tests.analysis.making import chain, make_procedure, procedures, read_all


def changes_of(procedure: Procedure) -> tuple[Written, list[Change], float]:
    """Return a procedure, its saving changes, and its mean minutes as written."""
    tree, table, odds = read_all(procedure)
    written = read_written(tree, table, odds)
    minutes = read_cost(tree, read_arrivals(tree, table, odds)).minutes
    assert minutes is not None
    return written, saving_changes(written), minutes.mean


# Odds 1, 1, 6 and 8/3 for something else; 20, 20 and 2 minutes.
LAST_IS_LIKELY = chain([1, 1, 6], [20, 20, 2])


def test_asking_the_likely_check_first() -> None:
    """k2 before k0: 2 minutes for all, then as written for those it does not name; by hand."""
    _, changes, minutes = changes_of(LAST_IS_LIKELY)
    total = 1 + 1 + 6 + 8 / 3
    assert minutes == pytest.approx((1 * 20 + 1 * 40 + (6 + 8 / 3) * 42) / total)
    best = changes[0]
    assert (best.step, best.before) == ("k2", "k0")
    then = (1 * 22 + 1 * 42 + 6 * 2 + 8 / 3 * 42) / total
    assert minutes - best.saves == pytest.approx(then)
    assert best.saved["cause:c2"] == pytest.approx(40)
    assert best.saved["cause:c0"] == pytest.approx(-2)
    assert best.presumed == ("cause:c0", "cause:c1")


def test_how_wrong_the_odds_may_be() -> None:
    """The saving is gone when gains over f equal losses times f."""
    written, changes, minutes = changes_of(LAST_IS_LIKELY)
    advice = first_allowed(written, changes, minutes)
    assert advice is not None
    assert advice.robustness.factor == pytest.approx(((6 * 40) / (1 * 2 + 1 * 2)) ** 0.5)
    assert advice.robustness.tippings[0].outcome == "cause:c2"


def test_a_guard_sees_whole_orders() -> None:
    """From the first step to the outcome; a change it refuses gives way to the next best."""
    written, changes, minutes = changes_of(LAST_IS_LIKELY)
    assert set(orders_after(written, changes[0])) == {
        ("k2", "cause:c2"),
        ("k2", "k0", "cause:c0"),
        ("k2", "k0", "k1", "cause:c1"),
        ("k2", "k0", "k1", "done"),
    }
    guard = Guard(lambda order: order[0] != "k2", frozenset(written.tree.order))
    advice = first_allowed(written, changes, minutes, guard)
    assert advice is not None
    assert (advice.change.step, advice.change.before) == ("k2", "k1")
    assert first_allowed(written, changes, minutes, Guard(lambda _: False, guard.steps)) is None


def test_a_check_that_tells_nothing_may_be_left_out() -> None:
    """Its minutes are saved, unless it does something to the machine or something needs it."""
    steps: dict[str, dict[str, Any]] = {
        "idle": {"ask": "?", "minutes": 7, "answers": {"yes": "step look", "no": "step look"}},
        "look": {"ask": "?", "minutes": 5, "answers": {"bad": "cause a", "good": "done"}},
    }
    change = changes_of(make_procedure(steps, {"a": {}}))[1][0]
    assert (change.step, change.before, change.saves) == ("idle", "", 7)
    with_effect = {**steps, "idle": {**steps["idle"], "closes": "petrol"}}
    assert all(change.before for change in changes_of(make_procedure(with_effect, {"a": {}}))[1])
    needed = {**steps, "look": {**steps["look"], "after": "idle"}}
    assert changes_of(make_procedure(needed, {"a": {}}))[1] == []


def test_preparations_come_after_what_is_asked_first() -> None:
    """A check moved before another comes before the actions that lead only to that one."""
    steps = {
        "cover-off": {"minutes": 9, "then": "step far"},
        "far": {"ask": "?", "minutes": 30, "answers": {"bad": "cause far", "good": "step near"}},
        "near": {"ask": "?", "answers": {"bad": "cause near", "good": "done"}, "after": []},
    }
    written, changes, _ = changes_of(make_procedure(steps, {"far": {}, "near": {}}))
    assert (changes[0].step, changes[0].before, changes[0].place) == ("near", "far", "cover-off")
    assert ("near", "cause:near") in set(orders_after(written, changes[0]))


def test_a_plan_tells_what_it_presumes() -> None:
    """Asked first, k2 is presumed to pass for the causes the author has ruled out by then."""
    tree, table, odds = read_all(LAST_IS_LIKELY)
    plan = find_optimum(read_problem(tree, table, odds)).plan
    assert presumptions(table, plan) == (("k2", "cause:c0"), ("k2", "cause:c1"))
    assert presumptions(table, None) == ()


@given(procedures(extras=False))
@settings(max_examples=60, deadline=None, print_blob=True)
def test_no_change_beats_the_best_plan(procedure: Procedure) -> None:
    """What a change would save is never more than what the search can gain."""
    written, changes, minutes = changes_of(procedure)
    tree, table, odds = read_all(procedure)
    early = [(change.step, change.before) for change in changes if change.before]
    best = find_optimum(read_problem(tree, table, odds), looks=10**6, early=early)
    for change in changes:
        if change.before:
            assert minutes - change.saves >= best.minutes - 1e-6
        else:
            assert change.saves <= minutes
    del written
