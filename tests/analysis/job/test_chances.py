"""Sums of uncertain amounts, in whole cents."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from itertools import product
from math import prod

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.analysis.job.chances import (
    MOST_POINTS,
    amount_of,
    cents_of,
    chances_of,
    mean_of,
    point_at,
    sum_of,
)

COIN = chances_of([(0, 1), (100, 1)])


@pytest.mark.parametrize(
    ("amount", "cents"), [("0", 0), ("12", 1200), ("0.10", 10), ("0.29", 29), ("99999.99", 9999999)]
)
def test_an_amount_is_whole_cents_and_back(amount, cents) -> None:
    """Money is never a floating figure on its way."""
    assert cents_of(Decimal(amount)) == cents
    assert amount_of(cents) == Decimal(amount)


@pytest.mark.parametrize(
    ("cents", "amount"),
    [
        (Fraction(1, 2), "0.01"),
        (Fraction(49, 100), "0.00"),
        (Fraction(10001, 2), "50.01"),
        (Fraction(1000, 3), "3.33"),
    ],
)
def test_a_mean_is_rounded_to_a_cent_once(cents, amount) -> None:
    """Halves go up, as on a bill."""
    assert amount_of(cents) == Decimal(amount)


def test_two_coins() -> None:
    """Two coins of one unit: nothing, one or two units with a quarter, a half and a quarter."""
    assert sum_of([COIN, COIN]) == {0: 0.25, 100: 0.5, 200: 0.25}


POINTS = {
    "the least": (0.1, 0), "just reached": (0.25, 0), "the middle": (0.5, 100),
    "nine in ten": (0.9, 200), "all": (1.0, 200),
}  # fmt: skip


@pytest.mark.parametrize(("share", "cents"), POINTS.values(), ids=POINTS)
def test_a_point_is_the_least_that_is_not_exceeded_so_often(share, cents) -> None:
    """Quantiles of two coins, by counting."""
    assert point_at(sum_of([COIN, COIN]), share) == cents


def test_nothing_costs_nothing() -> None:
    """No parts at all is a sure zero."""
    assert sum_of([]) == chances_of([]) == {0: 1.0}
    assert mean_of(sum_of([])) == 0


amounts = st.dictionaries(st.integers(0, 5000), st.integers(1, 9), min_size=1, max_size=4)


@settings(max_examples=60, deadline=None, print_blob=True)
@given(st.lists(amounts, min_size=1, max_size=4))
def test_a_sum_agrees_with_counting_every_case(parts: list[dict[int, int]]) -> None:
    """Every combination one by one gives the same probabilities and the same mean."""
    chances = [chances_of(part.items()) for part in parts]
    counted: dict[int, Fraction] = {}
    for case in product(*(part.items() for part in parts)):
        weight = prod((Fraction(times) for _, times in case), start=Fraction(1))
        cents = sum(cents for cents, _ in case)
        counted[cents] = counted.get(cents, Fraction(0)) + weight
    total = sum(counted.values())
    found = sum_of(chances)
    assert list(found) == sorted(counted)
    for cents, weight in counted.items():
        assert found[cents] == pytest.approx(float(weight / total))
    mean = sum(cents * weight for cents, weight in counted.items()) / total
    assert float(sum(map(mean_of, chances))) == pytest.approx(float(mean))


def test_many_different_sums_stay_within_bounds() -> None:
    """A coarser grid keeps the number of points small and the range close."""
    parts = [chances_of((7 ** (n + 1) * place, 1) for place in range(12)) for n in range(5)]
    found = sum_of(parts)
    assert len(found) <= MOST_POINTS
    mean, exact = float(mean_of(found)), float(sum(map(mean_of, parts)))
    assert mean == pytest.approx(exact, rel=0.002)
    assert max(found) == pytest.approx(sum(max(part) for part in parts), rel=0.002)
