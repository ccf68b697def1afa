"""Sprockets: the circle the chain's pins run on."""

from __future__ import annotations

from math import asin, pi, sin

FEWEST_TEETH = 3


def pitch_diameter_mm(pitch_mm: float, teeth: int) -> float:
    """Return the pitch diameter, p / sin(180° / z).

    Worked rules in Van Cleve, The English and American Mechanic; same formula in chain handbooks.
    """
    return pitch_mm / sin(pi / teeth)


def teeth_by_diameter(pitch_mm: float, diameter_mm: float) -> float:
    """Return the number of teeth a pitch diameter belongs to, not rounded: 180° / asin(p / d)."""
    return pi / asin(pitch_mm / diameter_mm)
