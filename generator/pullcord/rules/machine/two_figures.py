"""An entry has limits or a value, not both.

With two figures in one place nobody can tell which of them is meant.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.readings.sheet import expectations_of

ID = "two-figures"

FAILING = """
machine: old-bike
title: Old bike
kind: farm-bike
values:
  plug-gap: {limits: 0.6-0.7 mm, value: 0.7 mm, source: common practice}
"""

MENDED = FAILING.replace(", value: 0.7 mm", "")

MEND = "keep one of them; a figure that is judged goes under `limits`"


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every value and every pin's expectation with two figures."""
    for name, value in machine.values.items():
        if value.limits and value.value:
            yield Flaw(("values", name, "value"), f"`{name}` has both limits and a value", MEND)
    for place, pin, expected in expectations_of(machine):
        if expected.limits and expected.value:
            message = f"pin `{pin}` has limits of its own and names `{expected.value}` too"
            yield Flaw((*place, "value"), message, "keep one of them")
