"""Limits must be something a meter can be held against.

A page turns limits into what a good reading is on the owner's own meter. It can only do so with a
number, its unit, and an order that runs upward. `300-200 ohm` runs backwards; `about 5` has no
unit; `-3 ohm` cannot be.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.asked import asked_of
from pullcord.readings.limits import parse_as_written
from pullcord.readings.unit import ReadingError
from pullcord.rules.example import example

ID = "unreadable-limits"

FAILING = example("""
steps:
  casing:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: its two pins, general: 300-200 ohm, source: common practice}
    answers:
      below: cause dry-casing
      within: cause air-leak
      above: cause air-leak
""")

MENDED = FAILING.replace("300-200 ohm", "200-300 ohm")


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every `general` that cannot be read as limits."""
    for asked in asked_of(procedure):
        if asked.reading.general:
            place = ("steps", asked.name, "reading", "general")
            try:
                parse_as_written(asked.reading.general, asked.reading.quantity)
            except ReadingError as error:
                yield Flaw(place, str(error), error.mend)
