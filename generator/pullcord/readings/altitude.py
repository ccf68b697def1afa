"""Air pressure by height, and what that does to a compression gauge.

p(h) = p0 · (1 − L·h/T0)^(g·M / (R·L)), h in metres of geopotential height up to 11 km:
ISO 2533:1975 (same as the ICAO and U.S. 1976 standard atmospheres), with p0 = 101.325 kPa,
T0 = 288.15 K, L = 0.0065 K/m, g = 9.80665 m/s², M = 0.0289644 kg/mol, R = 8.31432 J/(mol K).
"""

from __future__ import annotations

SEA_LEVEL_KPA = 101.325
SEA_LEVEL_KELVIN = 288.15
LAPSE_KELVIN_PER_METRE = 0.0065
EXPONENT = 9.80665 * 0.0289644 / (8.31432 * LAPSE_KELVIN_PER_METRE)


def pressure_kpa(height_metres: float) -> float:
    """Return the standard atmosphere's absolute pressure at a height, up to 11 km."""
    ratio = 1 - LAPSE_KELVIN_PER_METRE * height_metres / SEA_LEVEL_KELVIN
    return float(SEA_LEVEL_KPA * ratio**EXPONENT)


def compression_at_height_kpa(sea_level_gauge_kpa: float, height_metres: float) -> float:
    """Return what a compression gauge reads at a height on an engine that reads so at sea level.

    The cylinder multiplies the absolute pressure it starts from, and the gauge counts from ambient:
    both go with the air pressure, so the gauge reading does too. Some makers' tables go by the
    density of the air instead and come out a few percent higher (from memory).
    """
    return sea_level_gauge_kpa * pressure_kpa(height_metres) / SEA_LEVEL_KPA


def compression_at_sea_level_kpa(gauge_kpa: float, height_metres: float) -> float:
    """Return the sea-level equal of a compression read at a height."""
    return gauge_kpa * SEA_LEVEL_KPA / pressure_kpa(height_metres)
