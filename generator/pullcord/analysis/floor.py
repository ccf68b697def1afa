"""Lower bounds on what telling a set of outcomes apart must cost on average.

Two bounds, both for the minutes times the probability of the set:

- Information. The answers along a walk must yield the entropy of the outcomes (`bounds.py`).
- The long walk. Follow, from check to check, the likeliest answer of each. The walk can only end
  when one outcome is left, and a check sends away at most the probability of its other answers.
  Spending minutes on the checks that send away most per minute first keeps the least probability
  waiting; that is the ratio rule of `order.py` with fractions allowed, so it is a bound.
"""

from __future__ import annotations

from collections.abc import Iterable


def long_walk(mass: float, largest: float, leaving: Iterable[tuple[float, float]]) -> float:
    """Return the long walk's bound for outcomes of so much probability, the largest of it one's.

    `leaving` are, for each check, its minutes and the probability of all but its likeliest answer.
    """
    needed = mass - largest
    pairs = [(minutes, gone) for minutes, gone in leaving if gone > 0]
    return _waiting(mass, needed, pairs) + _last_halves(needed, pairs)


def _waiting(mass: float, needed: float, pairs: list[tuple[float, float]]) -> float:
    """Return minutes times the probability waiting, which falls evenly during each check."""
    total = 0.0
    for minutes, gone in sorted(pairs, key=lambda pair: pair[0] / pair[1]):
        part = min(1.0, needed / gone)
        total += minutes * part * (mass - gone * part / 2)
        mass -= gone * part
        needed -= gone * part
        if needed <= 0:
            break
    return total


def _last_halves(needed: float, pairs: list[tuple[float, float]]) -> float:
    """Return what waiting for a check's end adds: its minutes times half of what it sends away."""
    total = 0.0
    for minutes, gone in sorted(pairs):
        part = min(gone, needed)
        total += minutes * part / 2
        needed -= part
        if needed <= 0:
            break
    return total
