"""From a leaflet's bounds to how near a limit a reading may come and still be judged."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import sqrt

ONE_SIDED_95 = 1.6449
"""Standard uncertainties to a one-sided conformance probability of 95 % (normal distribution).

JCGM 106:2012, clause 7.3, tabulates it; the digits here are those of the normal distribution.
"""


def rectangular_uncertainty(half_width: float) -> float:
    """Return the standard uncertainty of a value known only to lie within ± a bound.

    JCGM 100:2008, 4.3.7: half-width over √3.
    """
    return half_width / sqrt(3)


def combined_uncertainty(
    parts: Sequence[float], correlations: Mapping[tuple[int, int], float] | None = None
) -> float:
    """Return the combined standard uncertainty of parts, each a sensitivity times its uncertainty.

    JCGM 100:2008, equation (16); without correlations the root of the sum of squares (10).
    Correlations are by the positions of the two parts. The parts keep their signs.
    """
    squares = sum(part**2 for part in parts)
    crossed = (correlations or {}).items()
    return sqrt(squares + sum(2 * r * parts[one] * parts[other] for (one, other), r in crossed))


def guard_band(uncertainty: float) -> float:
    """Return how far a reading must keep from a limit to be judged (JCGM 106:2012, clause 8)."""
    return ONE_SIDED_95 * uncertainty
