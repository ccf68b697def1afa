"""The instruments a shop owns: what each range shows and how far it may be off."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from pullcord.model.base import Line, Record


class MeterRange(Record):
    """One position of the dial."""

    up_to: Line
    """Where the range ends and over-range begins, such as `200 ohm`."""
    step: Line
    """The last digit on the display, such as `0.1 ohm`."""
    percent: Annotated[float, Field(ge=0, le=50)] = 0
    """How far off it may be, in percent of what it shows."""
    digits: Annotated[int, Field(ge=0, le=200)] = 0
    """How far off it may be besides, in steps of the last digit."""


def _ranges(*rows: tuple[str, str, float, int]) -> tuple[MeterRange, ...]:
    return tuple(
        MeterRange(up_to=up_to, step=step, percent=percent, digits=digits)
        for up_to, step, percent, digits in rows
    )


CHEAP_RANGES = _ranges(
    ("200 ohm", "0.1 ohm", 0.8, 3),
    ("2 kohm", "1 ohm", 0.8, 2),
    ("20 kohm", "10 ohm", 0.8, 2),
    ("200 kohm", "100 ohm", 0.8, 2),
    ("2 Mohm", "1 kohm", 1.0, 5),
    ("2 V", "1 mV", 0.5, 2),
    ("20 V", "0.01 V", 0.5, 2),
    ("200 V", "0.1 V", 0.5, 2),
    ("200 mA", "0.1 mA", 1.5, 2),
    ("10 A", "0.01 A", 3.0, 5),
)
"""A cheap 3½-digit meter (1999 counts). Common practice: no source, a typical leaflet's figures."""


class MeterSheet(Record):
    """The shop's meter. Leave it out for a cheap 3½-digit one."""

    title: Line = "a cheap 3½-digit meter"
    """What to call it on the pages."""
    leads: Line = "0.3 ohm"
    """What it shows on the lowest ohm range with the probes held together."""
    ranges: tuple[MeterRange, ...] = CHEAP_RANGES
    """Every range that is used, of every instrument: a gauge or a caliper may be listed too."""
