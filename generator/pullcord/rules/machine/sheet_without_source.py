"""Every figure says where it comes from.

A figure from the maker's manual, one measured from a good machine and one that is merely common
practice do not weigh the same when a part is about to be bought.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.readings.sheet import expectations_of

ID = "sheet-without-source"

FAILING = """
machine: old-bike
title: Old bike
kind: farm-bike
values:
  source-coil: {limits: 200-300 ohm}
"""

MENDED = FAILING.replace("300 ohm}", "300 ohm, source: measured from a good one}")

MEND = "write `source:` and a manual, `measured from a good one` or `common practice`"


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every figure without a source."""
    for name, value in machine.values.items():
        if (value.limits or value.value) and not value.source:
            yield Flaw(("values", name), f"`{name}` does not say where it comes from", MEND)
    for place, pin, expected in expectations_of(machine):
        if expected.limits and not expected.source:
            message = f"what pin `{pin}` should read does not say where it comes from"
            yield Flaw(place, message, MEND)
