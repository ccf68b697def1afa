"""The whole review of a procedure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass

import pytest
from hypothesis import given, settings

from pullcord.analysis.review import Review, review
from pullcord.model.procedure import Procedure
from tests.analysis.making import chain, procedures

RUN = chain([5, 3, 2], [4, 1, 2])


def test_a_review_says_all_of_it() -> None:
    """As written, at best, the bound, and the change that wins most, for one small run."""
    found = review(RUN)
    assert found.cost.minutes is not None
    advice = found.presuming.advice
    assert advice is not None
    assert (advice.change.step, advice.change.before) == ("k1", "k0")
    optimum = found.presuming.optimum
    assert optimum.at_least <= optimum.minutes <= advice.minutes_then < advice.minutes_now
    assert advice.minutes_now == found.cost.minutes.mean
    assert found.sure.advice is None
    assert found.sure.optimum.minutes == pytest.approx(found.cost.minutes.mean)
    assert found.presuming.curve[-1][1] == pytest.approx(1)
    assert found.bounds.bits <= found.bounds.checks <= found.cost.checks.mean
    assert found.is_comparable


def test_jobs_change_what_is_advised() -> None:
    """When this shop's jobs were all c2, its check is the one to ask first."""
    found = review(RUN, counts={"cause:c2": 50})
    assert found.presuming.advice is not None
    assert found.presuming.advice.change.step == "k2"
    assert found.odds.jobs == 50


def test_a_missing_tool_is_said_and_no_change_is_sought() -> None:
    """The walk gets stuck, some outcomes cannot be told apart, and nothing is compared."""
    found = review(chain([5, 3, 2], [4, 1, 2], needs="meter"), tools=[])
    assert found.undoable == ("k0", "k1", "k2")
    assert found.never_told_apart == (found.tree.outcomes,)
    assert found.sure.advice is None
    assert found.presuming.advice is None
    assert not found.is_comparable


@given(procedures())
@settings(max_examples=60, deadline=None, print_blob=True)
def test_any_procedure_can_be_reviewed(procedure: Procedure) -> None:
    """No valid procedure brings the review down, and reviewing it again says the same."""
    first, second = review(procedure, looks=200), review(procedure, looks=200)
    assert plain(first) == plain(second)
    assert sum(first.odds.shares.values()) == pytest.approx(1)


def plain(value: object) -> object:
    """Return a review as text, in the order in which everything stands."""
    if isinstance(value, Review) or is_dataclass(value):
        return [plain(getattr(value, each.name)) for each in fields(value)]
    if isinstance(value, Mapping):
        return [(plain(key), plain(each)) for key, each in value.items()]
    return repr(value)
