"""Minutes, checks and money of a procedure as written."""

from __future__ import annotations

import pytest

from pullcord.analysis.arrivals import read_arrivals, steps_without_tools
from pullcord.analysis.belief import checks_that_tell_nothing, read_beliefs
from pullcord.analysis.cost import Cost, expected_cost, read_cost, read_parts_cost
from pullcord.analysis.spread import spread_of
from pullcord.model.procedure import Procedure
from tests.analysis.making import chain, make_procedure, read_all


def cost_of(procedure: Procedure, undoable: frozenset[str] = frozenset()) -> Cost:
    """Return what a procedure costs."""
    tree, table, odds = read_all(procedure)
    return read_cost(tree, read_arrivals(tree, table, odds, undoable))


def test_a_run_of_three_checks() -> None:
    """Odds 3, 2, 1 and as much as 2 for something else; 5, 10 and 20 minutes: by hand."""
    cost = cost_of(chain([3, 2, 1], [5, 10, 20]))
    assert cost.minutes is not None
    assert cost.checks is not None
    assert cost.minutes.mean == pytest.approx((3 * 5 + 2 * 15 + 3 * 35) / 8)
    assert (cost.minutes.least, cost.minutes.median, cost.minutes.worst) == (5, 15, 35)
    assert cost.checks.mean == pytest.approx((3 * 1 + 2 * 2 + 3 * 3) / 8)
    assert cost.settled_after == pytest.approx({5: 3 / 8, 10: 3 / 8, 20: 5 / 8})
    assert dict(cost.curve) == pytest.approx({5: 3 / 8, 15: 5 / 8, 35: 1})
    assert (cost.misled, cost.stuck) == ({}, {})


def test_an_outcome_at_the_end_of_several_ways() -> None:
    """It takes each way as often as its answers allow."""
    steps = {
        "look": {"ask": "?", "minutes": 2, "answers": {"dry": "cause tap", "damp": "step feel"}},
        "feel": {"ask": "?", "minutes": 4, "answers": {"loose": "cause tap", "tight": "done"}},
    }
    tap = cost_of(make_procedure(steps, {"tap": {}})).outcomes[0]
    assert tap.minutes is not None
    assert (tap.minutes.mean, tap.minutes.least, tap.minutes.worst) == (4, 2, 6)
    assert tap.share == pytest.approx(0.5)


def test_a_cause_that_mimics_another_misleads() -> None:
    """What `tells` says of a check before its own branch sends some walks to the wrong end."""
    procedure = chain([1, 1], [5, 5])
    step = procedure.steps["k0"].model_copy(update={"tells": {"bad": ("c1",)}})
    procedure = procedure.model_copy(update={"steps": {**procedure.steps, "k0": step}})
    cost = cost_of(procedure)
    assert cost.misled == pytest.approx({("cause:c1", "cause:c0"): 1 / 6})
    assert cost.curve[-1][1] == pytest.approx(5 / 6)


def test_a_missing_tool_ends_the_walk() -> None:
    """What cannot be done is named, with how many walks come to it."""
    procedure = chain([1, 1], [5, 5], needs="meter")
    assert steps_without_tools(procedure, ["meter"]) == frozenset()
    undoable = steps_without_tools(procedure, [])
    assert undoable == {"k0", "k1"}
    cost = cost_of(procedure, undoable)
    assert cost.stuck == {"k0": 1.0}
    assert cost.minutes is None


def test_buying_parts_in_order_and_finding_first() -> None:
    """Plug 5, coil 40, odds 3 to 1 and no others: 5 + 40 / 4 against 3 / 4 of 5 + 1 / 4 of 40."""
    procedure = chain([3, 1], [5, 5])
    causes = {
        "c0": procedure.causes["c0"].model_copy(update={"parts": 5}),
        "c1": procedure.causes["c1"].model_copy(update={"parts": 40}),
    }
    tree, _, odds = read_all(procedure.model_copy(update={"causes": causes, "other_odds": 0.0}))
    parts = read_parts_cost(tree, odds)
    assert parts.order == ("cause:c0", "cause:c1")
    assert parts.in_order == pytest.approx(15)
    assert parts.found_first == pytest.approx(13.75)
    assert parts.unpriced == ()


def test_doing_things_in_a_row_stops_at_the_first_that_helps() -> None:
    """Nothing is paid after probability 1; something that never helps is always paid."""
    assert expected_cost([1.0, 0.0], [3, 100]) == 3
    assert expected_cost([0.0, 1.0], [3, 100]) == 103


SPREADS = {
    "nothing": ([], None),
    "half and half": ([(10, 1), (2, 1)], (6, 2, 2, 10)),
    "one that never happens": ([(10, 0), (2, 1)], (2, 2, 2, 10)),
    "only what never happens": ([(10, 0), (2, 0)], (6, 2, 2, 10)),
}


@pytest.mark.parametrize(("pairs", "figures"), SPREADS.values(), ids=SPREADS)
def test_spreads(pairs: list[tuple[float, float]], figures: tuple[float, ...] | None) -> None:
    """Mean, median, least and worst by hand."""
    found = spread_of(pairs)
    assert (found and (found.mean, found.median, found.least, found.worst)) == figures


def test_checks_that_tell_nothing() -> None:
    """One whose answers lead to one place changes no belief; one that parts outcomes does."""
    steps = {
        "ask": {"ask": "?", "answers": {"yes": "step look", "no": "step look"}},
        "look": {"ask": "?", "answers": {"bad": "cause a", "good": "done"}},
    }
    tree, table, odds = read_all(make_procedure(steps, {"a": {}}))
    beliefs = read_beliefs(tree, table, odds)
    assert checks_that_tell_nothing(beliefs) == ("ask",)
    assert (beliefs["ask"].bits, beliefs["look"].bits) == pytest.approx((0, 1))
    assert beliefs["look"].answers[0].shares == {"cause:a": 1.0}
