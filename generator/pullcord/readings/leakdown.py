"""Leak-down of tyres and tanks: how fast pressure is lost, once temperature is set aside.

A closed volume of gas follows p/T = constant (Amontons; ideal gas), p absolute and T in kelvin. So
the second gauge reading is first put back to the temperature of the first.
"""

from __future__ import annotations

from pullcord.readings.altitude import SEA_LEVEL_KPA

KELVIN_AT_ZERO_CELSIUS = 273.15


def at_other_temperature_kpa(
    gauge_kpa: float, celsius: float, other_celsius: float, ambient_kpa: float = SEA_LEVEL_KPA
) -> float:
    """Return what a gauge would read on the same closed volume at another temperature."""
    ratio = (other_celsius + KELVIN_AT_ZERO_CELSIUS) / (celsius + KELVIN_AT_ZERO_CELSIUS)
    return (gauge_kpa + ambient_kpa) * ratio - ambient_kpa


def leak_kpa_per_hour(
    first_kpa: float,
    second_kpa: float,
    hours: float,
    first_celsius: float = 20.0,
    second_celsius: float = 20.0,
) -> float:
    """Return the gauge pressure lost per hour, the second reading put to the first's °C."""
    second = at_other_temperature_kpa(second_kpa, second_celsius, first_celsius)
    return (first_kpa - second) / hours


def leak_litres_per_hour(
    volume_litres: float, kpa_per_hour: float, ambient_kpa: float = SEA_LEVEL_KPA
) -> float:
    """Return the air lost per hour at ambient pressure: V · dp/dt / p (pressure-change method)."""
    return volume_litres * kpa_per_hour / ambient_kpa
