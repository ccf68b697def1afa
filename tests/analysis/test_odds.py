"""Where odds come from, and what finished jobs make of them."""

from __future__ import annotations

from typing import Any

import pytest

from pullcord.analysis.odds import (
    ALL_EQUAL,
    NO_SOURCE,
    OWN_LOG,
    TAKEN_AS_AVERAGE,
    Odds,
    read_odds,
    update_odds,
)
from pullcord.analysis.tree import read_tree
from tests.analysis.making import make_procedure


def odds_of(a: dict[str, Any], b: dict[str, Any], **more: Any) -> Odds:
    """Return the odds of two causes and `done`."""
    steps = {
        "one": {"ask": "?", "answers": {"bad": "cause a", "good": "step two"}},
        "two": {"ask": "?", "answers": {"bad": "cause b", "good": "done"}},
    }
    return read_odds(read_tree(make_procedure(steps, {"a": a, "b": b}, **more)))


SHARES = {
    "none given": (odds_of({}, {}), "equal", (1 / 3, 1 / 3, 1 / 3)),
    "all given": (odds_of({"odds": 3}, {"odds": 1}), "given", (1 / 2, 1 / 6, 1 / 3)),
    "one given": (odds_of({"odds": 4}, {}), "partly given", (1 / 3, 1 / 3, 1 / 3)),
    "other odds": (odds_of({"odds": 3}, {"odds": 1}, other_odds=4), "given", (3 / 8, 1 / 8, 1 / 2)),
    "no others": (odds_of({"odds": 3}, {"odds": 1}, other_odds=0), "given", (3 / 4, 1 / 4, 0)),
}


@pytest.mark.parametrize(("odds", "basis", "shares"), SHARES.values(), ids=SHARES)
def test_shares(odds: Odds, basis: str, shares: tuple[float, ...]) -> None:
    """Causes without odds count as average ones; something else counts as one more of these."""
    assert odds.basis == basis
    assert tuple(odds.shares.values()) == pytest.approx(shares)
    assert odds.something_else == pytest.approx(shares[-1])


def test_every_share_says_where_it_comes_from() -> None:
    """The author's source, that there is none, or that it was taken as average or equal."""
    given = odds_of({"odds": 3, "odds_from": "common practice"}, {"odds": 1})
    assert tuple(given.sources.values()) == ("common practice", NO_SOURCE, TAKEN_AS_AVERAGE)
    assert set(odds_of({}, {}).sources.values()) == {ALL_EQUAL}


def test_equal_odds_and_jobs_are_laplaces_rule() -> None:
    """(n + 1) / (N + k): 5 of 7 jobs and 3 outcomes give 6 in 10 (Laplace 1774)."""
    odds = update_odds(odds_of({}, {}), {"cause:a": 5, "done": 2, "cause:unheard-of": 9})
    assert tuple(odds.shares.values()) == pytest.approx((0.6, 0.1, 0.3))
    assert odds.jobs == 7
    assert all(OWN_LOG in source for source in odds.sources.values())


def test_the_author_counts_as_many_jobs_as_asked() -> None:
    """Dirichlet's mean: the odds so far weigh as `prior_jobs`, each job as one."""
    before = odds_of({"odds": 3}, {"odds": 1}, other_odds=0)
    after = update_odds(before, {"cause:b": 4}, prior_jobs=4)
    assert tuple(after.shares.values()) == pytest.approx((3 / 8, 5 / 8, 0))


def test_no_jobs_change_nothing() -> None:
    """Not the shares, not what is said of them."""
    before = odds_of({"odds": 3}, {"odds": 1})
    assert update_odds(before, {}) == before
