"""How much air spilled petrol can make flammable, as a range.

It is an average: all of the spill evaporated and mixed evenly, at the leanest mixture that burns.
Real vapour lies low and does not mix, so a part of the room burns long before the average says so.
The figure shows how far a little petrol reaches. It is never a volume that is safe.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor

LOWER_LIMIT = 0.014
"""Leanest share of vapour in air that burns: NFPA 497 and IEC 60079-20-1, which agree."""
UPPER_LIMIT = 0.076
"""Richest share that burns: the same tables."""
FLASH_POINT_CELSIUS = -46.0
"""Above this temperature petrol gives off enough vapour to burn: the same tables."""
VAPOUR_DENSITY = (3.0, 4.0)
"""Least and most density relative to air: NFPA 325, from memory."""
LIQUID_DENSITY_KG_PER_LITRE = (0.72, 0.76)
"""Least and most: NIOSH Pocket Guide, gasoline, from memory."""
AIR_DENSITY_KG_PER_M3 = 1.2041
"""Dry air at 20 degrees Celsius and 101.325 kPa: ideal gas, 28.965 g/mol (CODATA constants)."""
CUP_LITRES = 0.25
"""What we call a cup."""


@dataclass(frozen=True)
class FlammableAir:
    """The least and the most air, in cubic metres, that a spill can make flammable."""

    least_m3: float
    most_m3: float

    def say(self) -> str:
        """Return the range as printed, rounded outwards: `2.6 to 3.8`."""
        return f"{floor(self.least_m3 * 10) / 10:g} to {ceil(self.most_m3 * 10) / 10:g}"


def flammable_air(spill_litres: float) -> FlammableAir:
    """Return how much air a spill can bring to the lower flammable limit, mixed evenly.

    The liquid's mass, divided by the vapour's density, is the volume of the vapour; divided by the
    lower limit it is the volume of the mixture. Density of air at 20 degrees Celsius.
    Raises ValueError for a spill that is not a positive number of litres.
    """
    if not 0 < spill_litres < float("inf"):
        raise ValueError("a spill is a positive number of litres")
    lightest, heaviest = VAPOUR_DENSITY
    thinnest, densest = LIQUID_DENSITY_KG_PER_LITRE
    return FlammableAir(
        least_m3=_vapour_m3(spill_litres, thinnest, heaviest) / LOWER_LIMIT,
        most_m3=_vapour_m3(spill_litres, densest, lightest) / LOWER_LIMIT,
    )


def _vapour_m3(litres: float, kg_per_litre: float, relative_density: float) -> float:
    return litres * kg_per_litre / (relative_density * AIR_DENSITY_KG_PER_M3)
