"""Chains, sprockets, engines and tyres against handbooks."""

from __future__ import annotations

import pytest
from scipy.constants import R, zero_Celsius

from pullcord.readings.chain import (
    FIXED_CENTRES_PERCENT,
    elongation_limit_percent,
    elongation_percent,
    limit_length_mm,
)
from pullcord.readings.engine import displacement_cc
from pullcord.readings.leakdown import (
    at_other_temperature_kpa,
    leak_kpa_per_hour,
    leak_litres_per_hour,
)
from pullcord.readings.sprocket import pitch_diameter_mm, teeth_by_diameter


@pytest.mark.parametrize(
    ("teeth", "percent"), [(11, 3.0), (40, 3.0), (60, 3.0), (80, 2.5), (100, 2.0)]
)
def test_elongation_limit(teeth: int, percent: float) -> None:
    """3 %, and 200/N % for large sprockets: two chain makers' service notes (they cite ANSI B29.1).

    One sets the turn at 66 teeth, the other at 67, so nothing is tested in between.
    """
    assert elongation_limit_percent(teeth) == pytest.approx(percent)


def test_fixed_centres() -> None:
    """About 1.5 % where centres are fixed or chains run in parallel: one maker's service note."""
    assert FIXED_CENTRES_PERCENT == 1.5


def test_worked_chain_example() -> None:
    """24 links of 1 in pitch are worn out at about 24.75 in: a chain dealer's example of 3 %.

    The dealer rounds 24.72 up; a foot of half-inch chain grown by 3/8 in has grown by 3.1 %.
    """
    assert limit_length_mm(25.4, 24, 3.0) / 25.4 == pytest.approx(24.75, abs=0.04)
    assert elongation_percent(12.375 * 25.4, 12.7, 24) == pytest.approx(3.125)


@pytest.mark.parametrize(
    ("teeth", "pitch_inch", "diameter_inch"), [(48, 2.5, 38.225), (80, 2.0, 50.94)]
)
def test_pitch_diameter(teeth: int, pitch_inch: float, diameter_inch: float) -> None:
    """Worked rules in Van Cleve, The English and American Mechanic (15.29 p and 25.47 p)."""
    ours = pitch_diameter_mm(pitch_inch * 25.4, teeth) / 25.4
    assert ours == pytest.approx(diameter_inch, rel=1e-4)


def test_pitch_by_diameter() -> None:
    """Van Cleve: 75 teeth on 40 in have a pitch of 1.6752 in (its sine is rounded to .04188)."""
    assert 40 / pitch_diameter_mm(1, 75) == pytest.approx(1.6752, abs=3e-4)
    assert teeth_by_diameter(1.6750, 40) == pytest.approx(75, abs=0.01)


@pytest.mark.parametrize(
    ("teeth", "factor"),
    [
        (9, 2.9238), (10, 3.2361), (11, 3.5495), (12, 3.8637), (13, 4.1786),
        (14, 4.4940), (15, 4.8097), (16, 5.1258), (17, 5.4422),
    ],
)  # fmt: skip
def test_pitch_factors(teeth: int, factor: float) -> None:
    """Factors as in Machinery's Handbook's table; recomputed, the printed table was not read."""
    assert pitch_diameter_mm(1, teeth) == pytest.approx(factor, abs=6e-5)


@pytest.mark.parametrize(
    ("bore_mm", "stroke_mm", "cylinders", "cc"),
    [
        (68, 54, 1, 196.1), (50, 49.5, 1, 97.2),
        # An engine data sheet's four cylinders of 90.47 × 88.9 mm: 2286 cm³.
        (90.47, 88.9, 4, 2286),
        # Two cells of a bore and stroke table for four-cylinder engines: 77 × 64, 90.5 × 69 mm.
        (77, 64, 4, 1192), (90.5, 69, 4, 1776),
    ],
)  # fmt: skip
def test_displacement(bore_mm: float, stroke_mm: float, cylinders: int, cc: float) -> None:
    """π/4 · b² · s by definition; the larger ones are printed in published tables."""
    assert displacement_cc(bore_mm, stroke_mm, cylinders) == pytest.approx(cc, rel=5e-4)


def test_pressure_follows_the_ideal_gas() -> None:
    """Against p = nRT/V with scipy's CODATA gas constant: 10 l at 150 kPa gauge, 20 to 0 °C."""
    ambient_pa, volume = 101_325.0, 0.010
    moles = (150_000 + ambient_pa) * volume / (R * (20 + zero_Celsius))
    cold_gauge_kpa = (moles * R * zero_Celsius / volume - ambient_pa) / 1000
    assert at_other_temperature_kpa(150, 20, 0) == pytest.approx(cold_gauge_kpa, rel=1e-9)


def test_a_cold_night_is_no_leak() -> None:
    """A tyre that only cooled has lost nothing once it is put back to the first temperature."""
    cold = at_other_temperature_kpa(150, 20, 5)
    assert leak_kpa_per_hour(150, cold, 8, 20, 5) == pytest.approx(0, abs=1e-9)
    assert leak_kpa_per_hour(150, 142, 4) == pytest.approx(2)


def test_leak_in_litres_follows_the_ideal_gas() -> None:
    """10 l that lose 5 kPa in an hour lose the moles that fill 0.493 l at ambient pressure."""
    kelvin = 20 + zero_Celsius
    moles = 5_000 * 0.010 / (R * kelvin)
    litres = moles * R * kelvin / 101_325 * 1000
    assert leak_litres_per_hour(10, 5) == pytest.approx(litres, rel=1e-9)
