"""Petrol's figures against tables we did not make."""

from __future__ import annotations

import csv
from importlib.util import find_spec
from pathlib import Path

import pytest
from scipy import constants

from pullcord.safety import petrol

GASOLINE = "8006-61-9"
TABLES = {
    "NFPA 497 (2008)": "NFPA 497 2008.tsv",
    "IEC 60079-20-1 (2010)": "IS IEC 60079-20-1 2010.tsv",
}


def row(table: str, cas: str) -> dict[str, str]:
    """Return a substance's row of a table shipped in the `chemicals` package, as its file has it.

    The file is read and not the package's functions: these merge tables that disagree.
    """
    spec = find_spec("chemicals")
    assert spec is not None
    assert spec.origin is not None
    path = Path(spec.origin).parent / "Safety" / TABLES[table]
    with path.open(encoding="utf-8", newline="") as file:
        return next(each for each in csv.DictReader(file, delimiter="\t") if each["CAS"] == cas)


@pytest.mark.parametrize("table", TABLES)
def test_flammable_limits_and_flash_point(table) -> None:
    """Both standards' tables, as shipped in `chemicals` 1.5: 1.4 %, 7.6 %, 227.15 K."""
    gasoline = row(table, GASOLINE)
    assert pytest.approx(float(gasoline["LFL"])) == petrol.LOWER_LIMIT
    assert pytest.approx(float(gasoline["UFL"])) == petrol.UPPER_LIMIT
    flash_point_kelvin = petrol.FLASH_POINT_CELSIUS + constants.zero_Celsius
    assert pytest.approx(float(gasoline["T_flash"])) == flash_point_kelvin


def test_density_of_air_follows_from_the_gas_constant() -> None:
    """Ideal gas, CODATA constants as shipped in scipy; 28.965 g/mol is dry air (from memory)."""
    molar_volume_m3 = constants.R * constants.convert_temperature(20, "C", "K") / constants.atm
    assert molar_volume_m3 == pytest.approx(24.055e-3, rel=1e-4)
    assert pytest.approx(0.028965 / molar_volume_m3, rel=1e-4) == petrol.AIR_DENSITY_KG_PER_M3


# Cubic feet of vapour per US gallon = 8.33 SG / (0.075 VD), the rule of NFPA texts (from memory).
NFPA_RULE = {"light vapour": (0.72, 3.0, 26.7), "heavy vapour": (0.75, 3.5, 23.8)}


@pytest.mark.parametrize(("gravity", "density", "cubic_feet"), NFPA_RULE.values(), ids=NFPA_RULE)
def test_vapour_of_a_gallon_agrees_with_the_rule_in_feet_and_gallons(
    gravity, density, cubic_feet, monkeypatch
) -> None:
    """Other units, another density of air: within one per cent of each other."""
    monkeypatch.setattr(petrol, "VAPOUR_DENSITY", (density, density))
    monkeypatch.setattr(petrol, "LIQUID_DENSITY_KG_PER_LITRE", (gravity, gravity))
    litres = constants.gallon / constants.liter
    vapour_m3 = petrol.flammable_air(litres).least_m3 * petrol.LOWER_LIMIT
    assert vapour_m3 / constants.foot**3 == pytest.approx(cubic_feet, rel=0.01)


def test_hexane_by_its_molar_mass(monkeypatch) -> None:
    """One litre of n-hexane: 659 g/L over 86.18 g/mol (from memory), limit 1.1 % from NFPA 497.

    By moles alone this is 16.7 cubic metres; our way goes by densities and must agree.
    """
    limit = float(row("NFPA 497 (2008)", "110-54-3")["LFL"])
    assert limit == pytest.approx(0.011)
    density = 86.18 / 28.965
    monkeypatch.setattr(petrol, "VAPOUR_DENSITY", (density, density))
    monkeypatch.setattr(petrol, "LIQUID_DENSITY_KG_PER_LITRE", (0.659, 0.659))
    monkeypatch.setattr(petrol, "LOWER_LIMIT", limit)
    by_moles_m3 = 659 / 86.18 * 24.055e-3 / limit
    assert by_moles_m3 == pytest.approx(16.7, abs=0.05)
    assert petrol.flammable_air(1).least_m3 == pytest.approx(by_moles_m3, rel=1e-3)


def test_a_cup_is_published_as_a_range() -> None:
    """The least and the most differ by more than the vapour's density alone makes them."""
    cup = petrol.flammable_air(petrol.CUP_LITRES)
    assert cup.least_m3 < petrol.flammable_air(0.25).most_m3
    assert cup.say() == "2.6 to 3.8"
    assert float(cup.say().split()[0]) <= cup.least_m3
    assert float(cup.say().split()[-1]) >= cup.most_m3


@pytest.mark.parametrize("litres", [0, -1, float("inf"), float("nan")])
def test_nonsense_is_refused(litres) -> None:
    """A spill is a positive, finite number of litres."""
    with pytest.raises(ValueError, match="positive number of litres"):
        petrol.flammable_air(litres)
