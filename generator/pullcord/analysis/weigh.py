"""The probability and the uncertainty of a set of outcomes, quickly."""

from __future__ import annotations

from collections.abc import Mapping
from math import log2

from pullcord.analysis.problem import Problem

CHUNK_BITS = 8

Sums = tuple[float, float]
"""The sum of weights, and the sum of weight times log2 of weight."""


class Scales:
    """Weighs sets of a problem's outcomes; remembers partial sums."""

    def __init__(self, problem: Problem) -> None:
        """Prepare the sums of every eight neighbouring outcomes."""
        self._shares = problem.shares
        self._loose = [question for question in problem.questions if question.loose]
        self._chunks = [
            _chunk(self._shares[start : start + CHUNK_BITS])
            for start in range(0, len(self._shares), CHUNK_BITS)
        ]

    def weigh(self, possible: int, done: int) -> Sums:
        """Return the sums over a set, given which questions of several answers were asked.

        An outcome that may give k answers to a question weighs 1/k once one of them was given.
        """
        asked = [q.loose for q in self._loose if q.heard & done]
        if any(bit & possible for loose in asked for bit in loose):
            return self._weigh_loose(possible, asked)
        mass, product = 0.0, 0.0
        chunk = 0
        while possible:
            own = self._chunks[chunk][possible & 0xFF]
            mass += own[0]
            product += own[1]
            possible >>= CHUNK_BITS
            chunk += 1
        return mass, product

    def _weigh_loose(self, possible: int, asked: list[Mapping[int, int]]) -> Sums:
        mass, product = 0.0, 0.0
        for place, share in enumerate(self._shares):
            bit = 1 << place
            if not possible & bit:
                continue
            weight = share
            for loose in asked:
                weight /= loose.get(bit, 1)
            mass += weight
            product += _self_log(weight)
        return mass, product


def uncertainty(sums: Sums) -> float:
    """Return mass times entropy in bits."""
    mass, product = sums
    return max(mass * log2(mass) - product, 0.0) if mass > 0 else 0.0


def _chunk(shares: tuple[float, ...]) -> list[Sums]:
    sums = [(0.0, 0.0)]
    for share in shares:
        sums += [(mass + share, product + _self_log(share)) for mass, product in sums]
    return sums


def _self_log(weight: float) -> float:
    return weight * log2(weight) if weight > 0 else 0.0
