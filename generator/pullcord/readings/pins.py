"""What a connector's pins should read, in the words of its chart and of the table under it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pullcord.model.spot import Spot, is_inside, parse_spot
from pullcord.model.wire import Wire, WireError, parse_wire
from pullcord.readings.answers import shares_of
from pullcord.readings.bands import bands_of
from pullcord.readings.limits import Limits
from pullcord.readings.meter import Meter
from pullcord.readings.sheet import NOT_KNOWN, expected_limits, expected_source, find_pin

if TYPE_CHECKING:
    from pullcord.model.machine import Connector, Expectation, Machine, Pin


@dataclass(frozen=True)
class PinReading:
    """One thing a pin should read."""

    against: str
    """Where the other probe goes, in words: `ground`, `b1`, `b1 of Ignition unit's plug`."""
    key: str
    """`key on`, `key off`, or "" when it does not matter."""
    short: str
    """The limits as short as they can be read: `200–300 Ω`; "?" when nobody knows."""
    words: str
    """The limits in words, or that they are not known."""
    good: str
    """What the shop's meter must show to prove it good; "" when it cannot, or nobody knows."""
    source: str
    """Where the limits come from; "" when nobody says."""


@dataclass(frozen=True)
class PinRow:
    """One pin: a cell of the chart, and a row of the table."""

    name: str
    """The name procedures use."""
    spot: Spot
    wire: Wire | None
    """None when its colour is not known."""
    function: str
    readings: tuple[PinReading, ...]
    note: str


@dataclass(frozen=True)
class ConnectorView:
    """A connector with its pins in reading order, ready to be drawn or listed."""

    machine: str
    """The machine's name."""
    name: str
    """The connector's name."""
    connector: Connector
    pins: tuple[PinRow, ...]
    blanks: frozenset[Spot]
    """Places that hold no wire."""

    @property
    def side_words(self) -> str:
        """Return the sentences that say which side is looked at."""
        seen = {
            "into the harness plug": "Seen looking into the harness plug",
            "from the wire side": "Seen from the wire side of the harness plug",
        }[self.connector.seen]
        return (
            f"{seen}, latch at the {self.connector.latch}. "
            "From the other side left and right are swapped."
        )


def connector_views(machine: Machine, meter: Meter) -> Iterator[ConnectorView]:
    """Yield every connector of a sheet; pins and blanks that have no place are left out."""
    for name, connector in machine.connectors.items():
        rows = (
            _row(pin_name, pin, spot, name, machine, meter)
            for pin_name, pin in connector.pins.items()
            if (spot := _place(pin.at, connector))
        )
        blanks = (_place(text, connector) for text in connector.blanks)
        yield ConnectorView(
            machine.machine,
            name,
            connector,
            tuple(sorted(rows, key=lambda row: row.spot)),
            frozenset(spot for spot in blanks if spot),
        )


def _place(text: str, connector: Connector) -> Spot | None:
    spot = parse_spot(text)
    return spot if spot and is_inside(spot, connector.rows, connector.columns) else None


def _row(name: str, pin: Pin, spot: Spot, plug: str, machine: Machine, meter: Meter) -> PinRow:
    return PinRow(
        name=name,
        spot=spot,
        wire=_wire(pin.wire),
        function=pin.function,
        readings=tuple(_reading(each, plug, machine, meter) for each in pin.expect),
        note=pin.note or "",
    )


def _wire(text: str | None) -> Wire | None:
    try:
        return parse_wire(text) if text else None
    except WireError:
        return None


def _reading(expected: Expectation, plug: str, machine: Machine, meter: Meter) -> PinReading:
    limits = expected_limits(expected, machine)
    return PinReading(
        against=_against(expected.against, plug, machine),
        key=f"key {expected.key}" if expected.key else "",
        short=limits.short if limits else "?",
        words=limits.words if limits else NOT_KNOWN,
        good=_good(limits, meter) if limits else "",
        source=expected_source(expected, machine) if limits else "",
    )


def _against(place: str, plug: str, machine: Machine) -> str:
    found = find_pin(machine, place)
    spot = parse_spot(found.pin.at) if found else None
    if found is None or spot is None:
        return place
    where = "" if found.connector_name == plug else f" of {found.connector.title}"
    return f"{spot.label}{where}"


def _good(limits: Limits, meter: Meter) -> str:
    if not meter.ranges_for(limits.quantity):
        return ""
    shares = shares_of(("below", "within", "above"), limits, limits.quantity)
    bands = bands_of(shares, meter, limits.unit)
    return next((band.words for band in bands if band.answers == ("within",)), "")
