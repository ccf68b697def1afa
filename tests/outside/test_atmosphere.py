"""The standard atmosphere, and compression by height."""

from __future__ import annotations

import pytest
from fluids.atmosphere import ATMOSPHERE_1976

from pullcord.readings.altitude import (
    compression_at_height_kpa,
    compression_at_sea_level_kpa,
    pressure_kpa,
)

EARTH_RADIUS_METRES = 6_356_766
"""The 1976 standard's own, between geometric and geopotential height."""


@pytest.mark.parametrize(
    ("metres", "pascals"),
    [
        (0, 101325), (100, 100129), (500, 95460.8), (1000, 89874.6), (1500, 84556.0),
        (2000, 79495.2), (5000, 54019.9), (11000, 22632.1),
    ],
)  # fmt: skip
def test_table(metres: float, pascals: float) -> None:
    """ISO 2533:1975 by geopotential height, as quoted in the tables of several public programs."""
    assert pressure_kpa(metres) * 1000 == pytest.approx(pascals, rel=1e-5)


@pytest.mark.parametrize("metres", [0, 250, 1000, 2000, 3000, 4500])
def test_against_a_library(metres: float) -> None:
    """fluids' U.S. Standard Atmosphere 1976, which takes the geometric height."""
    geometric = EARTH_RADIUS_METRES * metres / (EARTH_RADIUS_METRES - metres)
    assert pressure_kpa(metres) * 1000 == pytest.approx(ATMOSPHERE_1976(geometric).P, rel=1e-5)


def test_worked_compression_example() -> None:
    """120 psi at sea level reads about 100 psi at 5000 ft: worked out in a reader's letter to a
    snow-machine magazine, by the same reasoning (absolute pressures in proportion)."""
    assert compression_at_height_kpa(120, 5000 * 0.3048) == pytest.approx(100, abs=1)


def test_there_and_back() -> None:
    """A reading put to sea level and back is itself."""
    assert compression_at_sea_level_kpa(compression_at_height_kpa(900, 1200), 1200) == (
        pytest.approx(900)
    )
