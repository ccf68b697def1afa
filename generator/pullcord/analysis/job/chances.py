"""Sums of money that are not certain, in whole cents, each with its probability."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

Chances = Mapping[int, float]
"""Probability by cents; they sum to 1."""

NOTHING: Chances = {0: 1.0}
MOST_POINTS = 2000
"""More different sums than this are put together on a coarser grid."""
ALMOST = 1e-12
"""What rounding may take off a sum of probabilities."""


def cents_of(amount: Decimal) -> int:
    """Return an amount in whole cents, halves rounded up."""
    return int((amount * 100).to_integral_value(ROUND_HALF_UP))


def amount_of(cents: int | Fraction) -> Decimal:
    """Return cents as an amount with two places, halves of a cent rounded up."""
    whole = Fraction(cents)
    rounded = (2 * whole.numerator + whole.denominator) // (2 * whole.denominator)
    return Decimal(rounded).scaleb(-2)


def chances_of(pairs: Iterable[tuple[int, float]]) -> Chances:
    """Return chances from cents and weights in any order; nothing at all when there are none."""
    weights: dict[int, float] = {}
    for cents, weight in pairs:
        weights[cents] = weights.get(cents, 0.0) + weight
    total = sum(weights.values())
    if total <= 0:
        return NOTHING
    return {cents: weights[cents] / total for cents in sorted(weights)}


def mean_of(chances: Chances) -> Fraction:
    """Return the mean in cents: exact for the probabilities as they are held."""
    weights = {cents: Fraction(share) for cents, share in chances.items()}
    return sum((cents * weight for cents, weight in weights.items()), Fraction(0)) / sum(
        weights.values()
    )


def sum_of(parts: Iterable[Chances]) -> Chances:
    """Return the chances of the sum of independent amounts (discrete convolution).

    Where there would be too many points they are moved to the nearest of a coarser grid, which
    moves a sum by half a grid step at most.
    """
    total = NOTHING
    for part in parts:
        pairs = (
            (one + other, share * weight)
            for one, share in total.items()
            for other, weight in part.items()
        )
        total = _coarser(chances_of(pairs))
    return total


def point_at(chances: Chances, share: float) -> int:
    """Return the least cents that are not exceeded with at least this probability."""
    reached = 0.0
    for cents in sorted(chances):
        reached += chances[cents]
        if reached >= share - ALMOST:
            return cents
    return max(chances)


def _coarser(chances: Chances) -> Chances:
    grid = 1
    while len(chances) > MOST_POINTS:
        grid *= 2
        moved = (((2 * cents + grid) // (2 * grid) * grid, p) for cents, p in chances.items())
        chances = chances_of(moved)
    return chances
