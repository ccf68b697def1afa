"""What follows from the figures of a machine sheet: lengths, diameters, volumes, pressures.

The names looked for are listed in `NAMES`; a figure that is missing or cannot be read is passed
over.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from pullcord.model.quantity import Quantity
from pullcord.readings.altitude import compression_at_height_kpa, pressure_kpa
from pullcord.readings.amount import amount_text
from pullcord.readings.both import length_both, twin_text
from pullcord.readings.chain import (
    FIXED_CENTRES_PERCENT,
    elongation_limit_percent,
    limit_length_mm,
    new_length_mm,
)
from pullcord.readings.engine import displacement_cc
from pullcord.readings.interval import OPEN
from pullcord.readings.leakdown import at_other_temperature_kpa, leak_litres_per_hour
from pullcord.readings.sheet import value_limits
from pullcord.readings.sprocket import FEWEST_TEETH, pitch_diameter_mm
from pullcord.readings.unit import UNITS

if TYPE_CHECKING:
    from pullcord.model.machine import Machine

NAMES: dict[str, Quantity] = {
    "bore": "length",
    "stroke": "length",
    "cylinders": "count",
    "chain-pitch": "length",
    "chain-links": "count",
    "front-sprocket-teeth": "count",
    "rear-sprocket-teeth": "count",
    "compression": "pressure",
    "tank-volume": "volume",
}
"""Sheet values from which something follows, with what they measure."""

TYRES = "tyre-pressure"
"""How the name of a tyre's pressure begins."""

TYRE_SET_CELSIUS = 20.0
TYRE_READ_CELSIUS = (0, 10, 30)
"""A tyre is set in the shop and read in the field."""

LINKS_MEASURED = (6, 12, 20)
"""Stretches of chain a rule or a tape can be held along."""

CHAIN_SOURCE = "ANSI B29.1, as quoted in chain makers' service notes"
SPROCKET_SOURCE = "pitch / sin(180° / teeth)"
LEAK_SOURCE = "volume × pressure lost / ambient pressure (ideal gas, 101.3 kPa ambient)"
TYRE_SOURCE = "ideal gas at constant volume, 101.3 kPa ambient"
ATMOSPHERE_SOURCE = "ISO 2533 standard atmosphere"
TOO_LARGE = 10**6
"""In base units: no machine of a shed is a kilometre long or has a million teeth."""
LOW_METRES = 100.0
"""Below this height the gauge's own error is larger than the correction."""


@dataclass(frozen=True)
class Derived:
    """One line worked out from the sheet."""

    title: str
    text: str
    source: str


def derived_from(machine: Machine) -> Iterator[Derived]:
    """Yield everything that follows from a machine's sheet."""
    figures = {
        name: figure
        for name, quantity in NAMES.items()
        if (figure := _figure(machine, name, quantity)) is not None
    }
    yield from _engine(figures)
    yield from _chain(figures)
    yield from _sprockets(figures)
    yield from _compression(figures, machine.altitude_metres)
    yield from _tank(figures)
    yield from _tyres(machine)


def _figure(machine: Machine, name: str, quantity: Quantity) -> float | None:
    """Return a sheet's figure in base units: its middle, or its lower end; None if not usable."""
    limits = value_limits(machine.values.get(name), quantity)
    if limits is None or limits.quantity != quantity:
        return None
    figure = limits.interval.start.value if limits.nominal is None else limits.nominal
    return float(figure) if 0 < figure < TOO_LARGE else None


def _engine(figures: dict[str, float]) -> Iterator[Derived]:
    if {"bore", "stroke"} <= figures.keys():
        cylinders = int(figures.get("cylinders", 1))
        volume = displacement_cc(figures["bore"], figures["stroke"], cylinders)
        yield Derived("Displacement", f"{volume:.0f} cc", "bore and stroke")


def _chain(figures: dict[str, float]) -> Iterator[Derived]:
    if "chain-pitch" not in figures:
        return
    pitch = figures["chain-pitch"]
    teeth = max((int(value) for name, value in figures.items() if "teeth" in name), default=0)
    percent = elongation_limit_percent(max(teeth, 1))
    for links in LINKS_MEASURED:
        if links > figures.get("chain-links", OPEN):
            continue
        new, worn = new_length_mm(pitch, links), limit_length_mm(pitch, links, percent)
        fixed = limit_length_mm(pitch, links, FIXED_CENTRES_PERCENT)
        yield Derived(
            f"Chain over {links} links",
            f"new {length_both(new)}; replace at {length_both(worn)} ({percent:.1f} %), or at "
            f"{length_both(fixed)} ({FIXED_CENTRES_PERCENT} %) where nothing takes up the slack",
            CHAIN_SOURCE,
        )


def _sprockets(figures: dict[str, float]) -> Iterator[Derived]:
    pitch = figures.get("chain-pitch")
    for end in ("front", "rear"):
        teeth = int(figures.get(f"{end}-sprocket-teeth", 0))
        if pitch and teeth >= FEWEST_TEETH:
            diameter = length_both(pitch_diameter_mm(pitch, teeth))
            yield Derived(f"Pitch diameter, {end} sprocket", diameter, SPROCKET_SOURCE)


def _compression(figures: dict[str, float], metres: float | None) -> Iterator[Derived]:
    if "compression" not in figures or metres is None or abs(metres) < LOW_METRES:
        return
    here = compression_at_height_kpa(figures["compression"], metres)
    yield Derived(
        f"Compression at {metres:.0f} m",
        f"{_rounded(here, 'kPa')}, as the air there has {pressure_kpa(metres):.0f} kPa",
        ATMOSPHERE_SOURCE,
    )


def _tank(figures: dict[str, float]) -> Iterator[Derived]:
    if "tank-volume" in figures:
        litres = figures["tank-volume"] / 1000
        lost = leak_litres_per_hour(litres, 1)
        yield Derived(
            "Leak-down of the empty tank",
            f"1 kPa lost in an hour is {lost:.2g} l of air, 5 kPa is {5 * lost:.2g} l",
            LEAK_SOURCE,
        )


def _tyres(machine: Machine) -> Iterator[Derived]:
    for name in machine.values:
        set_kpa = _figure(machine, name, "pressure") if name.startswith(TYRES) else None
        if set_kpa is not None:
            reads = ", ".join(
                f"{_rounded(_later_kpa(set_kpa, celsius), 'kPa')} at {celsius} °C"
                for celsius in TYRE_READ_CELSIUS
            )
            yield Derived(
                f"{name.replace('-', ' ').capitalize()}, no leak",
                f"set to {_rounded(set_kpa, 'kPa')} at {TYRE_SET_CELSIUS:.0f} °C it reads {reads}; "
                "only what is lost beyond that in an hour is a leak",
                TYRE_SOURCE,
            )


def _later_kpa(set_kpa: float, celsius: float) -> float:
    return at_other_temperature_kpa(set_kpa, TYRE_SET_CELSIUS, celsius)


def _rounded(value: float, unit: str) -> str:
    number = Decimal(f"{value:.0f}")
    return f"{amount_text(number, UNITS[unit])} ({twin_text(number, UNITS[unit])})"
