"""A wire's colour is written with the letter codes of IEC 60757.

`BK` is black; `BK/WH` is black with a white stripe; `RDBU` is a wire of two colours, joined in the
standard's order; green with yellow is only ever `GNYE`. `BL` could be black or blue, so it is not
taken.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.model.wire import WireError, parse_wire
from pullcord.readings.sheet import pins_of

ID = "unknown-wire"

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
      ground: {at: a1, wire: BL, function: Ground}
"""

MENDED = FAILING.replace("BL", "BK")


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every wire colour that is no code."""
    for place, _, pin in pins_of(machine):
        if pin.wire:
            try:
                parse_wire(pin.wire)
            except WireError as error:
                yield Flaw((*place, "wire"), str(error), error.mend)
