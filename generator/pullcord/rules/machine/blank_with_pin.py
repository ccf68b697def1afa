"""A blank has no pin.

`blanks` lists the places that hold no wire. A place that is both a blank and a pin is one or the
other in the real plug.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.model.spot import parse_spot

ID = "blank-with-pin"

FAILING = """
machine: old-bike
title: Old bike
kind: farm-bike
connectors:
  unit:
    title: Ignition unit
    rows: 1
    columns: 2
    blanks: [a1]
    pins:
      ground: {at: a1, wire: GN, function: Ground}
"""

MENDED = FAILING.replace("at: a1", "at: a2")


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every pin in a place that is said to be blank."""
    for plug, connector in machine.connectors.items():
        blanks = {parse_spot(text) for text in connector.blanks} - {None}
        for name, pin in connector.pins.items():
            if parse_spot(pin.at) in blanks:
                yield Flaw(
                    ("connectors", plug, "pins", name, "at"),
                    f"place `{pin.at}` is listed as a blank",
                    "take it out of `blanks`, or put the pin elsewhere",
                )
