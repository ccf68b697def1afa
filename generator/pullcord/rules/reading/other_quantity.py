"""Limits must be of the quantity that is measured.

A resistance is held against ohms. Limits in volts beside `quantity: resistance` mean that one of
the two is a slip of the pen, and a page built from them would mislead.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.model.quantity import Quantity
from pullcord.readings.asked import Asked, asked_of, fitting_machines
from pullcord.readings.limits import Limits, parse_as_written
from pullcord.readings.unit import ReadingError
from pullcord.rules.example import example

ID = "other-quantity"

FAILING = example("""
steps:
  casing:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: its two pins, general: 200-300 V, source: common practice}
    answers:
      below: cause dry-casing
      within: cause air-leak
      above: cause air-leak
""")

MENDED = FAILING.replace("200-300 V", "200-300 ohm")


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for limits, the procedure's own or a sheet's, of another quantity."""
    for asked in asked_of(procedure):
        yield from _own(asked)
        yield from _sheets(asked, procedure, library)


def _own(asked: Asked) -> Iterator[Flaw]:
    quantity = asked.reading.quantity
    limits = _read(asked.reading.general, quantity)
    if limits and limits.quantity != quantity:
        yield Flaw(
            ("steps", asked.name, "reading", "general"),
            f"`{asked.reading.general}` is a {limits.quantity}, but the step measures a {quantity}",
            f"write limits in a unit of {quantity}, or `quantity: {limits.quantity}`",
        )


def _sheets(asked: Asked, procedure: Procedure, library: Library | None) -> Iterator[Flaw]:
    name, quantity = asked.reading.limits or "", asked.reading.quantity
    for machine in fitting_machines(procedure, library):
        value = machine.values.get(name)
        limits = _read((value.limits or value.value) if value else None, quantity)
        if limits and limits.quantity != quantity:
            yield Flaw(
                ("steps", asked.name, "reading", "limits"),
                f"the step measures a {quantity}, but `{name}` on the sheet of "
                f"`{machine.machine}` is a {limits.quantity}",
                "ask for another value, or put the sheet right",
            )


def _read(text: str | None, quantity: Quantity) -> Limits | None:
    try:
        return parse_as_written(text, quantity) if text else None
    except ReadingError:
        return None
