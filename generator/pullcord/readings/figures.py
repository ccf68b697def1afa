"""Every figure of a machine sheet that must be readable, with its place and what it must be."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pullcord.finding import Place
from pullcord.model.quantity import Quantity
from pullcord.readings.derived import NAMES
from pullcord.readings.sheet import expectations_of

if TYPE_CHECKING:
    from pullcord.model.machine import Machine, SheetValue


@dataclass(frozen=True)
class Figure:
    """One figure as it was written."""

    place: Place
    text: str
    quantity: Quantity | None
    """What it must be; None when only its unit says so."""
    reason: str
    """Who says what it must be, for a message."""


def figures_of(machine: Machine) -> Iterator[Figure]:
    """Yield every figure that stands to be measured; plain words under `value` are passed over."""
    for name, value in machine.values.items():
        yield from _of_value(name, value)
    for place, _, expected in expectations_of(machine):
        if expected.limits:
            yield Figure((*place, "limits"), expected.limits, None, "")


def _of_value(name: str, value: SheetValue) -> Iterator[Figure]:
    quantity, reason = _must_be(name, value)
    if value.limits:
        yield Figure(("values", name, "limits"), value.limits, quantity, reason)
    elif value.value and quantity:
        yield Figure(("values", name, "value"), value.value, quantity, reason)


def _must_be(name: str, value: SheetValue) -> tuple[Quantity | None, str]:
    if value.quantity:
        return value.quantity, "its `quantity`"
    if value.winding:
        return "resistance", "what a copper winding has"
    if name in NAMES:
        return NAMES[name], f"`{name}`"
    return None, ""
