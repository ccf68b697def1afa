"""The probability and the uncertainty of a set of outcomes, quickly."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import reduce
from math import log2
from operator import or_

from pullcord.analysis.problem import Problem

CHUNK_BITS = 4
CHUNK_MASK = (1 << CHUNK_BITS) - 1

Sums = tuple[float, float]
"""The sum of weights, and the sum of weight times log2 of weight."""


@dataclass(frozen=True)
class _Weights:
    """What each outcome weighs, and the sums of every few neighbouring ones."""

    each: tuple[float, ...]
    chunks: tuple[tuple[Sums, ...], ...]


class Scales:
    """Weighs sets of a problem's outcomes.

    An outcome that may give k answers to a question weighs 1/k once one of them was heard. The
    sums of a few neighbours are made once for each set of such questions and remembered.
    """

    def __init__(self, problem: Problem) -> None:
        """Take over the shares and the questions of several answers."""
        self._shares = problem.shares
        self._loose = [question for question in problem.questions if question.loose]
        self._heard = reduce(or_, (question.heard for question in self._loose), 0)
        self._known: dict[int, _Weights] = {}

    def weigh(self, possible: int, done: int) -> Sums:
        """Return the sums over a set, after some questions were heard."""
        mass, product = 0.0, 0.0
        for chunk in self._weights(done & self._heard).chunks:
            if not possible:
                break
            own = chunk[possible & CHUNK_MASK]
            mass += own[0]
            product += own[1]
            possible >>= CHUNK_BITS
        return mass, product

    def largest(self, possible: int, done: int) -> float:
        """Return the weight of the likeliest outcome of a set."""
        weights = self._weights(done & self._heard).each
        return max(weight for place, weight in enumerate(weights) if possible >> place & 1)

    def _weights(self, heard: int) -> _Weights:
        known = self._known.get(heard)
        if known is None:
            each = tuple(self._weight(place, heard) for place in range(len(self._shares)))
            starts = range(0, len(each), CHUNK_BITS)
            chunks = tuple(_chunk(each[start : start + CHUNK_BITS]) for start in starts)
            known = self._known[heard] = _Weights(each, chunks)
        return known

    def _weight(self, place: int, heard: int) -> float:
        weight = self._shares[place]
        for question in self._loose:
            if question.heard & heard:
                weight /= question.loose.get(1 << place, 1)
        return weight


def uncertainty(sums: Sums) -> float:
    """Return mass times entropy in bits."""
    mass, product = sums
    return max(mass * log2(mass) - product, 0.0) if mass > 0 else 0.0


def _chunk(weights: Sequence[float]) -> tuple[Sums, ...]:
    sums = [(0.0, 0.0)]
    for weight in weights:
        own = weight * log2(weight) if weight > 0 else 0.0
        sums += [(mass + weight, product + own) for mass, product in sums]
    return tuple(sums)
