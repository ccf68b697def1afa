"""A figure that varies from walk to walk: its mean, its middle and its worst."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True)
class Spread:
    """Mean, median, least and most of one figure."""

    mean: float
    median: float
    """Half of all walks need no more than this."""
    least: float
    worst: float
    """The most that any walk needs, however unlikely."""


def spread_of(pairs: Iterable[tuple[float, float]]) -> Spread | None:
    """Return the spread of (figure, weight) pairs; None when there are none.

    Weights need not sum to 1; when all are nothing every figure counts alike.
    """
    ordered = sorted(pairs)
    if not ordered:
        return None
    if not sum(weight for _, weight in ordered):
        ordered = [(figure, 1.0) for figure, _ in ordered]
    total = sum(weight for _, weight in ordered)
    return Spread(
        mean=sum(figure * weight for figure, weight in ordered) / total,
        median=_median(ordered, total),
        least=ordered[0][0],
        worst=ordered[-1][0],
    )


def _median(ordered: list[tuple[float, float]], total: float) -> float:
    reached = 0.0
    for figure, weight in ordered:
        reached += weight
        if reached >= total / 2 - 1e-12:
            return figure
    return ordered[-1][0]
