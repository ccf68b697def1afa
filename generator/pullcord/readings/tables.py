"""Tables for the bench: the conversions as rows a page or a sheet of paper can print."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from pullcord.readings.altitude import SEA_LEVEL_KPA, pressure_kpa
from pullcord.readings.both import length_both
from pullcord.readings.chain import elongation_limit_percent, limit_length_mm, new_length_mm
from pullcord.readings.leakdown import (
    at_other_temperature_kpa,
    leak_kpa_per_hour,
    leak_litres_per_hour,
)
from pullcord.readings.sprocket import pitch_diameter_mm
from pullcord.readings.temperature import TABLE_CELSIUS, copper_factor
from pullcord.readings.wire import awg_area_mm2, awg_diameter_mm, copper_resistance_ohm

METRES_PER_FOOT = 0.3048


@dataclass(frozen=True)
class Table:
    """A small table with its heading, its columns and where its figures come from."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    source: str
    note: str = ""


def bench_tables() -> tuple[Table, ...]:
    """Return every table, in the order a page prints them."""
    return (_copper(), _wire(), _chain(), _sprocket(), _height(), _cold_tyre(), _leak())


def _copper() -> Table:
    rows = (
        (f"{celsius} °C", f"{copper_factor(Decimal(celsius)):.3f}") for celsius in TABLE_CELSIUS
    )
    return Table(
        "A copper coil in a cold or a hot shop",
        ("Shop temperature", "Multiply the 20 °C limits by"),
        tuple(rows),
        "copper, 0.00393 per °C at 20 °C (IEC 60028)",
        "Let a coil that has just run cool to the shop's temperature first.",
    )


def _wire() -> Table:
    def rows() -> Iterator[tuple[str, ...]]:
        for gauge in range(10, 26, 2):
            area = awg_area_mm2(gauge)
            yield (
                str(gauge),
                f"{awg_diameter_mm(gauge):.2f} mm",
                f"{area:.2f} mm²",
                f"{copper_resistance_ohm(area, 1000):.1f} ohm",
                f"{copper_resistance_ohm(area, 1000 * METRES_PER_FOOT):.2f} ohm",
            )

    return Table(
        "Copper wire by American gauge",
        ("Gauge", "Copper, across", "Copper, area", "1000 m", "1000 ft"),
        tuple(rows()),
        "gauge formula of ASTM B258; copper 0.017241 ohm·mm²/m at 20 °C (IEC 60028)",
        "A metre of any harness wire is far under 0.1 ohm: a cheap meter shows a bad joint, "
        "never the wire itself.",
    )


def _chain() -> Table:
    def rows() -> Iterator[tuple[str, ...]]:
        for pitch in (9.525, 12.7, 15.875):
            for links in (6, 12, 20):
                new = new_length_mm(pitch, links)
                usual = limit_length_mm(pitch, links, elongation_limit_percent(1))
                large = limit_length_mm(pitch, links, elongation_limit_percent(80))
                yield (
                    f"{pitch} mm",
                    str(links),
                    *(length_both(each) for each in (new, usual, large)),
                )

    return Table(
        "Chain wear, pin centre to pin centre, chain pulled tight",
        ("Pitch", "Links", "New", "Worn out at 3 %", "With 80 teeth: 2.5 %"),
        tuple(rows()),
        "3 %, and 200/N % above 66 or 67 teeth (ANSI B29.1, as quoted in makers' service notes)",
        "Where nothing takes up the slack, replace at about 1.5 %.",
    )


def _sprocket() -> Table:
    rows = (
        (str(teeth), f"{pitch_diameter_mm(1, teeth):.4f}")
        for teeth in (*range(9, 21), 30, 37, 40, 48)
    )
    return Table(
        "Sprocket pitch diameter",
        ("Teeth", "Multiply the pitch by"),
        tuple(rows),
        "1 / sin(180° / teeth)",
    )


def _height() -> Table:
    def rows() -> Iterator[tuple[str, ...]]:
        for metres in (0, 250, 500, 1000, 1500, 2000, 2500, 3000):
            pressure = pressure_kpa(metres)
            factor = pressure / SEA_LEVEL_KPA
            feet = f"{metres / METRES_PER_FOOT:.0f} ft"
            yield f"{metres} m", feet, f"{pressure:.1f} kPa", f"{factor:.2f}"

    return Table(
        "Compression by height above the sea",
        ("Height", "", "Air pressure", "Multiply the sea-level compression by"),
        tuple(rows()),
        "ISO 2533 standard atmosphere",
        "The weather moves the air pressure by a few percent besides.",
    )


def _cold_tyre() -> Table:
    def rows() -> Iterator[tuple[str, ...]]:
        for set_kpa in (35, 150, 250):
            later = (at_other_temperature_kpa(set_kpa, 20, celsius) for celsius in (0, 10, 30))
            yield f"{set_kpa} kPa", *(f"{each:.0f} kPa" for each in later)

    return Table(
        "A tyre set at 20 °C that loses no air",
        ("Set to", "reads at 0 °C", "at 10 °C", "at 30 °C"),
        tuple(rows()),
        "ideal gas at constant volume, 101.3 kPa ambient",
        "Only what is lost beyond this is a leak.",
    )


def _leak() -> Table:
    def rows() -> Iterator[tuple[str, ...]]:
        for lost in (1, 5, 20):
            per_hour = leak_kpa_per_hour(100, 100 - lost, 1)
            litres = (leak_litres_per_hour(volume, per_hour) for volume in (3, 10, 30))
            yield f"{lost} kPa in an hour", *(f"{each:.2f} l" for each in litres)

    return Table(
        "Air lost in an hour",
        ("Pressure lost", "3 l held", "10 l held", "30 l held"),
        tuple(rows()),
        "volume × pressure lost / ambient pressure (ideal gas)",
    )
