"""What a procedure costs as it is written: minutes and checks to each outcome, and parts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from pullcord.analysis.arrivals import Arrival, settled_by, settled_curve
from pullcord.analysis.odds import Odds
from pullcord.analysis.spread import Spread, spread_of
from pullcord.analysis.tree import Tree, is_cause

Key = TypeVar("Key")

MARKS_MINUTES = (5.0, 10.0, 20.0)
"""After how many minutes the settled share is told."""


@dataclass(frozen=True)
class OutcomeCost:
    """What it takes to find one outcome."""

    outcome: str
    share: float
    """How likely it is, 0 to 1."""
    minutes: Spread | None
    """To the answer, the remedy not counted; None when no walk finds it."""
    checks: Spread | None


@dataclass(frozen=True)
class Cost:
    """What the procedure costs over all outcomes."""

    minutes: Spread | None
    """To an answer; walks that get stuck are not counted."""
    checks: Spread | None
    outcomes: tuple[OutcomeCost, ...]
    """One by one, in the tree's order."""
    settled_after: Mapping[float, float]
    """By minutes: the share of probability that has been settled by then."""
    curve: tuple[tuple[float, float], ...]
    """Minutes and share settled by then, wherever it grows."""
    misled: Mapping[tuple[str, str], float]
    """Probability by (what is wrong, where the walk ends), where these differ."""
    stuck: Mapping[str, float]
    """Probability by the step at which a missing tool ends the walk."""


@dataclass(frozen=True)
class PartsCost:
    """Money for parts, in the shop's own money."""

    in_order: float
    """Expected, when parts are bought one after another, the likeliest first, until it is cured."""
    found_first: float
    """Expected, when the cause is found first and only its part is bought."""
    order: tuple[str, ...]
    """The causes whose parts would be bought, in that order."""
    unpriced: tuple[str, ...]
    """Causes that say nothing of parts; they are taken to need none."""


def read_cost(tree: Tree, arrivals: Sequence[Arrival]) -> Cost:
    """Return what the procedure costs, from its arrivals."""
    ended = [arrival for arrival in arrivals if not arrival.is_stuck]
    curve = settled_curve(arrivals)
    return Cost(
        minutes=spread_of((arrival.minutes, arrival.share) for arrival in ended),
        checks=spread_of((arrival.checks, arrival.share) for arrival in ended),
        outcomes=tuple(_outcome_cost(name, arrivals) for name in tree.outcomes),
        settled_after={mark: settled_by(curve, mark) for mark in MARKS_MINUTES},
        curve=curve,
        misled=_summed(
            ((arrival.outcome, arrival.end), arrival.share)
            for arrival in ended
            if not arrival.is_right
        ),
        stuck=_summed(
            (arrival.end.removeprefix("step:"), arrival.share)
            for arrival in arrivals
            if arrival.is_stuck
        ),
    )


def read_parts_cost(tree: Tree, odds: Odds) -> PartsCost:
    """Return the expected cost of parts, bought blindly in order and after finding the cause."""
    causes = {name: tree.procedure.causes[_name(name)] for name in tree.outcomes if is_cause(name)}
    prices = {name: float(cause.parts or 0) for name, cause in causes.items()}
    bought = sorted(
        (name for name, price in prices.items() if price), key=lambda name: -odds.shares[name]
    )
    return PartsCost(
        in_order=expected_cost(
            [odds.shares[name] for name in bought], [prices[name] for name in bought]
        ),
        found_first=sum(odds.shares[name] * price for name, price in prices.items()),
        order=tuple(bought),
        unpriced=tuple(name for name, cause in causes.items() if cause.parts is None),
    )


def expected_cost(shares: Sequence[float], costs: Sequence[float]) -> float:
    """Return what doing things in a row costs on average, stopping at the first that helps.

    The i-th is paid for unless an earlier one has helped: the sum of c_i (1 - p_1 - ... - p_(i-1))
    (Heckerman, Breese and Rommelse, Decision-theoretic troubleshooting, CACM 38(3), 1995).
    `shares` are probabilities of 1 in all, or less when none of them may help.
    """
    left = 1.0
    total = 0.0
    for share, cost in zip(shares, costs, strict=True):
        total += cost * left
        left -= share
    return total


def _outcome_cost(outcome: str, arrivals: Iterable[Arrival]) -> OutcomeCost:
    own = [arrival for arrival in arrivals if arrival.outcome == outcome]
    found = [arrival for arrival in own if arrival.is_right]
    return OutcomeCost(
        outcome=outcome,
        share=sum(arrival.share for arrival in own),
        minutes=spread_of((arrival.minutes, arrival.share) for arrival in found),
        checks=spread_of((arrival.checks, arrival.share) for arrival in found),
    )


def _summed(pairs: Iterable[tuple[Key, float]]) -> dict[Key, float]:
    totals: dict[Key, float] = {}
    for key, share in pairs:
        totals[key] = totals.get(key, 0.0) + share
    return totals


def _name(outcome: str) -> str:
    return outcome.partition(":")[2]
