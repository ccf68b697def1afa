"""Huffman's and Shannon's bounds, against worked examples from textbooks."""

from __future__ import annotations

from itertools import product
from math import log2

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import entropy

from pullcord.analysis.bounds import entropy_bits, huffman_length, least_checks, least_minutes

HORSES = [1 / 2, 1 / 4, 1 / 8, 1 / 16, 1 / 64, 1 / 64, 1 / 64, 1 / 64]

LENGTHS = {
    "ABRACADABRA, NUS CS5244 slides": ([5, 2, 2, 1, 1], 23),
    "24 12 10 8 8, lecture note": ([24, 12, 10, 8, 8], 138),
    "45 13 12 16 9 5, Cormen et al. (from memory)": ([45, 13, 12, 16, 9, 5], 224),
    "Cover and Thomas 5.6.1 (from memory)": ([0.25, 0.25, 0.2, 0.15, 0.15], 2.3),
    "Cover and Thomas 1.1.2, horse race (from memory)": (HORSES, 2),
}


@pytest.mark.parametrize(("weights", "length"), LENGTHS.values(), ids=LENGTHS)
def test_huffman_of_textbooks(weights: list[float], length: float) -> None:
    """The length of Huffman's code, in questions times weight, is the printed one."""
    assert huffman_length(weights) == pytest.approx(length)


ENTROPIES = {
    "Cover and Thomas 5.6.1 (from memory)": ([0.25, 0.25, 0.2, 0.15, 0.15], 2.2855),
    "Cover and Thomas 1.1.2, horse race (from memory)": (HORSES, 2.0),
}


@pytest.mark.parametrize(("weights", "bits"), ENTROPIES.values(), ids=ENTROPIES)
def test_entropy_of_textbooks(weights: list[float], bits: float) -> None:
    """The entropy is the printed one."""
    assert entropy_bits(weights) == pytest.approx(bits, abs=5e-5)


WEIGHTS = st.lists(st.floats(0.01, 100), min_size=2, max_size=12)


@given(WEIGHTS)
@settings(max_examples=100, deadline=None, print_blob=True)
def test_entropy_is_scipys(weights: list[float]) -> None:
    """scipy.stats.entropy gives the same bits."""
    assert entropy_bits(weights) == pytest.approx(entropy(weights, base=2))


@given(WEIGHTS)
@settings(max_examples=100, deadline=None, print_blob=True)
def test_huffman_is_within_one_of_the_entropy(weights: list[float]) -> None:
    """H <= L < H + 1 (Cover and Thomas, theorem 5.4.1, from memory)."""
    bits = entropy_bits(weights)
    assert bits - 1e-9 <= least_checks(weights) < bits + 1


@given(st.lists(st.integers(1, 9), min_size=2, max_size=5))
@settings(max_examples=60, deadline=None, print_blob=True)
def test_no_three_way_code_is_shorter(weights: list[int]) -> None:
    """With three answers a question, no lengths that Kraft's inequality allows are shorter."""
    lengths = product(range(1, 5), repeat=len(weights))
    allowed = (code for code in lengths if sum(3.0**-length for length in code) <= 1 + 1e-12)
    shortest = min(sum(w * n for w, n in zip(weights, c, strict=True)) for c in allowed)
    assert huffman_length(weights, answers=3) == pytest.approx(shortest)


def test_minutes_for_bits_are_bought_where_they_are_cheapest() -> None:
    """Two bits from a 2-minute and a 3-minute yes-or-no check cost both; half a bit costs 1."""
    checks = [(3.0, 2), (2.0, 2)]
    assert least_minutes(2, checks) == pytest.approx(5)
    assert least_minutes(0.5, checks) == pytest.approx(1)
    assert least_minutes(log2(3), [(3.0, 3)]) == pytest.approx(3)


def test_bits_that_no_check_yields_are_never_had() -> None:
    """The minutes are infinite, not wrong."""
    assert least_minutes(2, [(1.0, 2)]) == float("inf")
