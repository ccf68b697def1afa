"""A figure must be of the quantity its entry says.

`quantity: resistance` beside `12 V`, a copper winding in volts, a bore in kilopascals: one of the
two is a slip, and whoever reads the page cannot know which.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.readings.figures import figures_of
from pullcord.readings.limits import parse_as_written
from pullcord.readings.unit import ReadingError

ID = "figure-of-other-quantity"

FAILING = """
machine: old-bike
title: Old bike
kind: farm-bike
values:
  source-coil: {limits: 200-300 V, quantity: resistance, source: measured from a good one}
"""

MENDED = FAILING.replace("300 V", "300 ohm")


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every figure whose unit belongs to another quantity."""
    for figure in figures_of(machine):
        try:
            limits = parse_as_written(figure.text, figure.quantity)
        except ReadingError:
            continue
        if figure.quantity and limits.quantity != figure.quantity:
            yield Flaw(
                figure.place,
                f"`{figure.text}` is a {limits.quantity}, but {figure.reason} is a "
                f"{figure.quantity}",
                f"write it in a unit of {figure.quantity}, or change what it is said to be",
            )
