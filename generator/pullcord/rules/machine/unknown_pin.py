"""A probe that goes to `connector.pin` goes to one that is there.

A place in words, such as `ground` or `bare engine metal`, is taken as it stands. With a full stop
between two names it is a pin of this sheet.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.machine import Machine
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library
from pullcord.readings.sheet import expectations_of, find_pin, pins_of

ID = "unknown-pin"

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
      source: {at: a2, wire: BK/RD, function: Source coil, expect: [{against: unit.groud}]}
"""

MENDED = FAILING.replace("groud", "ground")

_DOTTED = re.compile(r"[a-z0-9-]+\.[a-z0-9-]+")


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every second probe on a pin the sheet does not have."""
    known = [f"{place[1]}.{name}" for place, name, _ in pins_of(machine)]
    for place, _, expected in expectations_of(machine):
        if _DOTTED.fullmatch(expected.against) and not find_pin(machine, expected.against):
            yield Flaw(
                (*place, "against"),
                f"the sheet has no pin `{expected.against}`",
                did_you_mean(expected.against, known, "name a connector and one of its pins"),
            )
