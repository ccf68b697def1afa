"""What no order of checks can beat: Huffman's and Shannon's bounds.

Naming one of several outcomes by questions is a prefix code, so the mean number of questions is at
least that of Huffman's code (Huffman, A method for the construction of minimum-redundancy codes,
Proc. IRE 40(9), 1952), and that is at least the entropy (Shannon 1948; Cover and Thomas, Elements
of Information Theory, theorem 5.4.1). With unequal costs: a check with k answers yields at most
log2 k bits, so the bits needed are bought at best from the checks that yield most per minute.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Sequence
from math import inf, log2


def entropy_bits(weights: Iterable[float]) -> float:
    """Return the entropy in bits of weights that need not sum to 1; 0 when all are nothing."""
    positive = [weight for weight in weights if weight > 0]
    total = sum(positive)
    return -sum(weight / total * log2(weight / total) for weight in positive) if positive else 0.0


def huffman_length(weights: Sequence[float], answers: int = 2) -> float:
    """Return the least sum of weight times questions, each question having so many answers.

    Divide by the sum of the weights for the mean number of questions.
    """
    heap = list(weights)
    # Empty leaves make the last merge a full one.
    while answers > 2 and len(heap) > 1 and (len(heap) - 1) % (answers - 1):
        heap.append(0)
    heapq.heapify(heap)
    length = 0.0
    while len(heap) > 1:
        merged = sum(heapq.heappop(heap) for _ in range(min(answers, len(heap))))
        length += merged
        heapq.heappush(heap, merged)
    return length


def least_checks(shares: Sequence[float], answers: int = 2) -> float:
    """Return the fewest checks on average that can tell the outcomes apart."""
    total = sum(shares)
    return huffman_length(shares, answers) / total if total else 0.0


def least_minutes(bits: float, checks: Iterable[tuple[float, int]]) -> float:
    """Return the fewest minutes in which checks can yield so many bits on average.

    `checks` are pairs of minutes and number of answers; each can be asked once. Best first by bits
    per minute, the last one in part: a convex function of the bits, so that it bounds the mean
    over all walks too. Infinite when the checks together cannot yield the bits.
    """
    return spend(bits, best_rates(checks))


def best_rates(checks: Iterable[tuple[float, int]]) -> tuple[tuple[float, float], ...]:
    """Return pairs of minutes and bits, the most bits per minute first."""
    pairs = [(minutes, log2(answers)) for minutes, answers in checks if answers > 1]
    return tuple(sorted(pairs, key=lambda pair: (pair[0] / pair[1], pair[0])))


def spend(bits: float, rates: Sequence[tuple[float, float]]) -> float:
    """Return the minutes for so many bits, bought in the order of `rates`."""
    minutes = 0.0
    for cost, gain in rates:
        if bits <= gain:
            return minutes + cost * max(bits, 0.0) / gain
        minutes += cost
        bits -= gain
    return inf if bits > 1e-9 else minutes
