"""A machine sheet: what one machine is, what it should read, and how its plugs are wired."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from pullcord.model.base import Line, Many, Name, Named, Record, Text
from pullcord.model.quantity import Quantity

Ignition = Literal["magneto", "points", "capacitor-discharge", "battery-coil"]
Side = Literal["top", "right", "bottom", "left"]
SeenFrom = Literal["into the harness plug", "from the wire side"]


class SheetValue(Record):
    """One figure of the sheet. It may be empty: then the page leaves room to write it in."""

    title: Line | None = None
    """What it is in words, when its name does not say it."""
    limits: Line | None = None
    """What a good one reads: `200-300 ohm`, `0.7 mm ± 0.1 mm`, `under 1 ohm`, `open`."""
    value: Line | None = None
    """A figure or a word that is not judged, such as `78 links` or `145/70-6`."""
    quantity: Quantity | None = None
    """What is measured; the unit says it too, and the two must agree."""
    source: Line | None = None
    """Where it comes from: a manual, `measured from a good one`, or `common practice`."""
    winding: Literal["copper"] | None = None
    """It is a coil of copper wire, whose resistance goes with the temperature."""
    at_celsius: Annotated[float, Field(ge=-40, le=120)] = 20
    """The temperature its limits hold at, in degrees Celsius."""
    note: Text | None = None
    """Anything the next person should know about it."""


class Expectation(Record):
    """What a probe on this pin should show."""

    against: Line
    """Where the other probe goes: `ground`, another pin's name, or a place in words."""
    limits: Line | None = None
    """What a good one reads."""
    value: Name | None = None
    """Or the name of the sheet's value that says so."""
    key: Literal["on", "off"] | None = None
    """Where the switch stands, when it matters."""
    source: Line | None = None
    """Where the limits come from."""


class Pin(Record):
    """One wire in a connector."""

    at: Line
    """Its place: row letter and column number (`a1`), or row and column (`1,1`)."""
    wire: Line | None = None
    """Its colour by IEC 60757: `BK`, or `BK/WH` for black with a white stripe."""
    function: Line
    """What the wire does."""
    expect: tuple[Expectation, ...] = ()
    """What it should read, and against what."""
    note: Text | None = None
    """Anything the next person should know about it."""


class Connector(Record):
    """One plug, drawn face-on."""

    title: Line
    """What it is and where it sits."""
    rows: Annotated[int, Field(ge=1, le=8)]
    """Rows of places, counted from the top as drawn."""
    columns: Annotated[int, Field(ge=1, le=12)]
    """Places in a row, counted from the left as drawn."""
    latch: Side = "top"
    """The side the latch is on, as drawn."""
    seen: SeenFrom = "into the harness plug"
    """Which side is looked at."""
    blanks: Many[Line] = ()
    """Places that hold no wire, such as `b3`."""
    pins: Named[Pin]
    """Every wire, by the name procedures use: `ignition-unit.source-coil`."""
    note: Text | None = None
    """Anything the next person should know about it."""


class Machine(Record):
    """A whole machine sheet file."""

    machine: Name
    """Its name: the file's name without `.yaml`, and the page's address."""
    title: Line
    """What the shed calls it."""
    kind: Name
    """The kind of machine, such as `pump`."""
    ignition: Ignition | None = None
    """How the spark is made; leave it out while it is not known."""
    fuel: Literal["carburettor"] | None = None
    """How the fuel is metered."""
    strokes: Literal["two", "four"] | None = None
    """Two-stroke or four-stroke."""
    drive: Line | None = None
    """How the power gets to the work: chain, belt, shaft, direct."""
    tyres: Line | None = None
    """Wheels and tyres, or none."""
    about: Text | None = None
    """Where it stands, what it is for, what is known of its past."""
    altitude_metres: Annotated[float, Field(ge=-400, le=5000)] | None = None
    """Height of the place it works at, for its compression."""
    values: Named[SheetValue] = Field(default_factory=dict, validate_default=True)
    """Every figure, by the name procedures use: `source-coil`."""
    connectors: Named[Connector] = Field(default_factory=dict, validate_default=True)
    """Every plug, by name."""
