"""How wrong the odds may be before a better order is not better any more.

With the order of checks fixed, the mean minutes are a sum over outcomes of share times minutes, so
what one order saves over another is linear in the odds and every break-even is exact.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf, sqrt


@dataclass(frozen=True)
class Tipping:
    """The odds of one outcome at which two orders are equally quick."""

    outcome: str
    factor: float
    """What its odds would have to be multiplied by, those of the others standing."""


@dataclass(frozen=True)
class Robustness:
    """How far a saving can be trusted."""

    factor: float
    """It remains a saving as long as no outcome's odds are wrong by more than this factor, up or
    down, whichever way hurts most; infinite when it is one whatever the odds, 1 when it is none."""
    tippings: tuple[Tipping, ...]
    """For each outcome whose odds alone could undo the saving; the nearest to 1 first."""


def read_robustness(shares: Mapping[str, float], saved: Mapping[str, float]) -> Robustness:
    """Return how wrong the shares may be, from the mean minutes saved by outcome (negative: lost).

    If every outcome that gains were f times less likely and every one that loses f times likelier,
    gains and losses would be equal at f = sqrt(gains / losses).
    """
    weighted = {name: share * saved.get(name, 0.0) for name, share in shares.items()}
    gains = sum(value for value in weighted.values() if value > 0)
    losses = -sum(value for value in weighted.values() if value < 0)
    if gains <= losses:
        return Robustness(1.0, ())
    return Robustness(sqrt(gains / losses) if losses else inf, _tippings(weighted))


def ratio_margins(pairs: Sequence[tuple[float, float]]) -> tuple[float, ...]:
    """Return, for each neighbouring two of a run, the factor by which their ratios differ.

    `pairs` are probability and minutes, in the best order. The two change places once the odds of
    one against the other are wrong by more than this factor (`order.py`).
    """
    return tuple(
        _over(first[0] * second[1], second[0] * first[1]) for first, second in pairwise(pairs)
    )


def _tippings(weighted: Mapping[str, float]) -> tuple[Tipping, ...]:
    total = sum(weighted.values())
    tippings = []
    for name, value in weighted.items():
        others = total - value
        if value and -others / value > 0:
            tippings.append(Tipping(name, -others / value))
    return tuple(sorted(tippings, key=lambda tip: max(tip.factor, 1 / tip.factor)))


def _over(value: float, by: float) -> float:
    return value / by if by else inf
