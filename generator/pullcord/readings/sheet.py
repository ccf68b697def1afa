"""Looking things up in a machine sheet."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pullcord.finding import Place
from pullcord.model.quantity import Quantity
from pullcord.readings.limits import Limits, parse_limits
from pullcord.readings.unit import ReadingError

if TYPE_CHECKING:
    from pullcord.model.machine import Connector, Expectation, Machine, Pin, SheetValue

NOT_KNOWN = "not known: write it here when you find it"
"""What stands where a sheet has no figure."""

_PIN = re.compile(r"[a-z][a-z0-9-]*\.[a-z][a-z0-9-]*")
_PLUG = " plug"


@dataclass(frozen=True)
class FoundPin:
    """A pin with the connector it sits in."""

    connector_name: str
    connector: Connector
    name: str
    pin: Pin


def pins_of(machine: Machine) -> Iterator[tuple[Place, str, Pin]]:
    """Yield the place, the name and the record of every pin of a sheet."""
    for plug, connector in machine.connectors.items():
        for name, pin in connector.pins.items():
            yield ("connectors", plug, "pins", name), name, pin


def expectations_of(machine: Machine) -> Iterator[tuple[Place, str, Expectation]]:
    """Yield the place, the pin's name and the record of everything a pin should read."""
    for place, name, pin in pins_of(machine):
        for position, expected in enumerate(pin.expect):
            yield (*place, "expect", position), name, expected


def find_pin(machine: Machine, place: str) -> FoundPin | None:
    """Return the pin that `connector.pin` names, or None when it is a place in words."""
    plug, dot, name = place.strip().partition(".")
    connector = machine.connectors.get(plug) if dot else None
    if connector is None or name not in connector.pins:
        return None
    return FoundPin(plug, connector, name, connector.pins[name])


def is_pin(place: str) -> bool:
    """Say whether a place is written as `connector.pin`, whether or not a sheet has it."""
    return _PIN.fullmatch(place.strip()) is not None


def place_words(place: str) -> str:
    """Return a probe's place for somebody without a sheet that has the pin.

    `ignition-unit.source-coil` is `source coil pin of the ignition unit plug`; a place in words
    stays as it is.
    """
    if not is_pin(place):
        return place
    plug, pin = (name.replace("-", " ") for name in place.strip().split("."))
    return f"{pin} pin of the {plug.removesuffix(_PLUG)}{_PLUG}"


def value_text(value: SheetValue | None) -> str | None:
    """Return what a sheet says of a value, in its own words; None when it says nothing."""
    return (value.limits or value.value) if value else None


def value_limits(value: SheetValue | None, quantity: Quantity | None = None) -> Limits | None:
    """Return the limits of a sheet's value; None when it has none that can be used.

    Whatever is wrong with them is a finding of the rules, so here it only counts as not known.
    """
    text = value_text(value)
    try:
        return parse_limits(text, quantity or (value.quantity if value else None)) if text else None
    except ReadingError:
        return None


def expected_limits(expectation: Expectation, machine: Machine) -> Limits | None:
    """Return what a pin should read, its own limits first, else the value it names."""
    if expectation.limits:
        try:
            return parse_limits(expectation.limits)
        except ReadingError:
            return None
    return value_limits(machine.values.get(expectation.value)) if expectation.value else None


def expected_source(expectation: Expectation, machine: Machine) -> str:
    """Return where a pin's limits come from; "" when nobody says."""
    value = machine.values.get(expectation.value) if expectation.value else None
    return expectation.source or (value.source if value and value.source else "")
