"""Copper wire: diameter by gauge number, resistance by length.

American wire gauge n: d = 0.005 in · 92^((36 − n)/39) (ASTM B258; formula as commonly quoted).
Copper at 20 °C: 0.017241 ohm·mm²/m (IEC 60028:1925, as quoted in a secondary page).
"""

from __future__ import annotations

from math import pi

COPPER_OHM_MM2_PER_METRE = 0.017241


def awg_diameter_mm(gauge: int) -> float:
    """Return the diameter of a solid wire of an American gauge number; -3 stands for 4/0."""
    return 0.005 * 25.4 * float(92 ** ((36 - gauge) / 39))


def awg_area_mm2(gauge: int) -> float:
    """Return the copper area of a wire of an American gauge number."""
    return area_mm2(awg_diameter_mm(gauge))


def area_mm2(diameter_mm: float) -> float:
    """Return the area of a round wire."""
    return pi / 4 * diameter_mm**2


def copper_resistance_ohm(area_square_mm: float, length_metres: float) -> float:
    """Return the resistance of a copper wire at 20 °C."""
    return COPPER_OHM_MM2_PER_METRE * length_metres / area_square_mm
