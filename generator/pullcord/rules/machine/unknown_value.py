"""A pin that names a value of the sheet names one that is there.

`value: source-coil` saves writing the limits twice, but only where the sheet has a `source-coil`.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.machine import Machine
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library
from pullcord.readings.sheet import expectations_of

ID = "unknown-value"

FAILING = """
machine: old-bike
title: Old bike
kind: farm-bike
values:
  source-coil: {limits: 200-300 ohm, source: measured from a good one}
connectors:
  unit:
    title: Ignition unit
    rows: 1
    columns: 2
    pins:
      source:
        at: a1
        function: Source coil
        expect: [{against: ground, value: sauce-coil}]
"""

MENDED = FAILING.replace("sauce", "source")


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every expectation that names a value the sheet does not have."""
    for place, _, expected in expectations_of(machine):
        if expected.value and expected.value not in machine.values:
            yield Flaw(
                (*place, "value"),
                f"the sheet has no value `{expected.value}`",
                did_you_mean(expected.value, machine.values, "write it under `values`"),
            )
