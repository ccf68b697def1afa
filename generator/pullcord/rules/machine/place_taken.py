"""No two pins share a place.

`a1` and `1,1` are the same place. Two wires in it would be drawn on top of each other, and one of
them would be looked for where it is not.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.model.spot import Spot, parse_spot

ID = "place-taken"

FAILING = """
machine: old-bike
title: Old bike
kind: farm-bike
connectors:
  unit:
    title: Ignition unit
    rows: 1
    columns: 2
    pins:
      ground: {at: a1, wire: GN, function: Ground}
      source: {at: "1,1", wire: BK/RD, function: Source coil}
"""

MENDED = FAILING.replace("1,1", "1,2")


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every pin in a place that an earlier pin has."""
    for plug, connector in machine.connectors.items():
        taken: dict[Spot, str] = {}
        for name, pin in connector.pins.items():
            spot = parse_spot(pin.at)
            if spot is None:
                continue
            first = taken.setdefault(spot, name)
            if first != name:
                yield Flaw(
                    ("connectors", plug, "pins", name, "at"),
                    f"place `{spot.label}` already has pin `{first}`",
                    "look at the plug again and put one of them elsewhere",
                )
