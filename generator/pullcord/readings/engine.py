"""Engine figures that follow from others by definition."""

from __future__ import annotations

from math import pi


def displacement_cc(bore_mm: float, stroke_mm: float, cylinders: int = 1) -> float:
    """Return the swept volume, π/4 · bore² · stroke, of all cylinders in cubic centimetres."""
    return pi / 4 * bore_mm**2 * stroke_mm * cylinders / 1000
