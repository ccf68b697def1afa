"""Runs of independent checks in a procedure, and how wrong odds may be."""

from __future__ import annotations

from math import inf

import pytest

from pullcord.analysis.changes import read_written
from pullcord.analysis.runs import Run, read_runs
from pullcord.analysis.sensitivity import ratio_margins, read_robustness
from pullcord.model.procedure import Procedure
from tests.analysis.making import chain, make_procedure, read_all


def runs_of(procedure: Procedure) -> tuple[Run, ...]:
    """Return the runs of a procedure."""
    return read_runs(read_written(*read_all(procedure)))


def test_a_run_is_put_in_order_of_odds_per_minute() -> None:
    """Odds 5, 3, 2 with no others and 4, 1, 2 minutes: 4.9 as written, 4.2 at best."""
    procedure = chain([5, 3, 2], [4, 1, 2]).model_copy(update={"other_odds": 0.0})
    (run,) = runs_of(procedure)
    assert (run.written, run.best) == (("k0", "k1", "k2"), ("k1", "k0", "k2"))
    assert (run.minutes_written, run.minutes_best) == pytest.approx((4.9, 4.2))
    assert run.margins == pytest.approx((2.4, 1.25))
    assert (run.share, run.refused) == (1, "")


def test_needs_hold_in_a_run() -> None:
    """A check that must come after another stays behind it."""
    procedure = chain([1, 9], [9, 1])
    step = procedure.steps["k1"].model_copy(update={"after": ("k0",)})
    (run,) = runs_of(procedure.model_copy(update={"steps": {**procedure.steps, "k1": step}}))
    assert run.best == ("k0", "k1")


def check(bad: str, good: str, **more: object) -> dict[str, object]:
    """Return a check with two answers."""
    return {"ask": "?", "answers": {"bad": f"cause {bad}", "good": good}, **more}


CAUSES = {name: {} for name in "abc"}


def test_a_shared_opening_cost_is_refused() -> None:
    """Two checks behind one cover: the run is shown as written, with the reason."""
    steps = {
        "k0": check("a", "step cover-off"),
        "cover-off": {"then": "step k1"},
        "k1": check("b", "step k2", after="cover-off"),
        "k2": check("c", "done", after="cover-off"),
    }
    (run,) = runs_of(make_procedure(steps, CAUSES))
    assert "share the cost of `cover-off`" in run.refused
    assert run.best == run.written == ("k0", "k1", "k2")


def test_an_action_ends_a_run() -> None:
    """Where a check does not say what it needs, checks are not moved past the action before it."""
    steps = {
        "k0": check("a", "step k1"),
        "k1": check("b", "step cover-off"),
        "cover-off": {"then": "step k2"},
        "k2": check("c", "done"),
    }
    (run,) = runs_of(make_procedure(steps, CAUSES))
    assert run.written == ("k0", "k1")


def test_a_way_into_the_middle_ends_a_run() -> None:
    """A check that other ways lead to is not part of the run above it."""
    steps = {
        "fork": {"ask": "?", "answers": {"one": "step k0", "two": "step k1"}},
        "k0": check("a", "step k1"),
        "k1": check("b", "done"),
    }
    assert runs_of(make_procedure(steps, CAUSES)) == ()


ROBUST = {
    "gains and losses": ({"a": 10.0, "b": -5.0}, (8.0) ** 0.5, [("a", 0.125), ("b", 8.0)]),
    "only gains": ({"a": 10.0, "b": 0.0}, inf, []),
    "no gain": ({"a": 1.0, "b": -9.0}, 1.0, []),
}


@pytest.mark.parametrize(("saved", "factor", "tips"), ROBUST.values(), ids=ROBUST)
def test_robustness(saved: dict[str, float], factor: float, tips: list[tuple[str, float]]) -> None:
    """Shares .8 and .2: at the stated factors what is gained equals what is lost."""
    found = read_robustness({"a": 0.8, "b": 0.2}, saved)
    assert found.factor == pytest.approx(factor)
    assert [(tip.outcome, pytest.approx(tip.factor)) for tip in found.tippings] == tips


def test_margins_between_neighbours() -> None:
    """Ratios .3 and .125 and 0: the first two change places at a factor of 2.4, the last never."""
    assert ratio_margins([(0.3, 1), (0.5, 4), (0, 2)]) == pytest.approx((2.4, inf))
