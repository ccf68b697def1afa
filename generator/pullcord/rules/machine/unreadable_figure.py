"""A figure of a sheet must be something a meter can be held against.

The same as for a procedure's limits: a number, its unit, and an order that runs upward. What is
only a word, such as a tyre's size, belongs under `value`, without a `quantity`.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.readings.figures import figures_of
from pullcord.readings.limits import parse_as_written
from pullcord.readings.unit import ReadingError

ID = "unreadable-figure"

FAILING = """
machine: old-bike
title: Old bike
kind: farm-bike
values:
  source-coil: {limits: 300-200 ohm, source: measured from a good one}
"""

MENDED = FAILING.replace("300-200", "200-300")


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every figure that cannot be read."""
    for figure in figures_of(machine):
        try:
            parse_as_written(figure.text, figure.quantity)
        except ReadingError as error:
            yield Flaw(figure.place, str(error), error.mend)
