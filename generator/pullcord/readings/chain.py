"""Roller chain: how long it may grow over a number of links before it must be replaced.

3 % is the usual limit; above 66 or 67 teeth on the largest sprocket the chain climbs off sooner and
the limit is 200/N %, N being the teeth (ANSI B29.1, as quoted by two chain makers' service notes,
of which one says 66 and the other 67). With fixed centres or chains running in parallel about
1.5 % (one of the two notes). The standards themselves were not read.
"""

from __future__ import annotations

USUAL_PERCENT = 3.0
FIXED_CENTRES_PERCENT = 1.5
"""Where no tensioner can take up the slack, or two chains share the load."""


def elongation_limit_percent(largest_teeth: int) -> float:
    """Return the growth at which a chain with a tensioner is worn out, in percent."""
    return min(USUAL_PERCENT, 200 / largest_teeth)


def new_length_mm(pitch_mm: float, links: int) -> float:
    """Return the length of a new chain over a number of links, pin centre to pin centre."""
    return pitch_mm * links


def limit_length_mm(pitch_mm: float, links: int, limit_percent: float) -> float:
    """Return the length over a number of links at which the chain is worn out."""
    return new_length_mm(pitch_mm, links) * (1 + limit_percent / 100)


def elongation_percent(length_mm: float, pitch_mm: float, links: int) -> float:
    """Return how much a chain has grown, from the length measured over a number of links."""
    return (length_mm / new_length_mm(pitch_mm, links) - 1) * 100
