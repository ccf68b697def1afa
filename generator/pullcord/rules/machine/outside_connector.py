"""A pin sits inside its connector.

`rows` and `columns` say how many places there are. `a1` is the first place of the top row as the
plug is drawn; `1,1` is the same.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw, Place
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.model.spot import Spot, is_inside, parse_spot

ID = "outside-connector"

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
      ground: {at: a3, wire: GN, function: Ground}
"""

MENDED = FAILING.replace("a3", "a2")


def check(machine: Machine, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every pin and every blank that has no place in its connector."""
    for plug, connector in machine.connectors.items():
        places: list[tuple[Place, str]] = [
            (("pins", name, "at"), pin.at) for name, pin in connector.pins.items()
        ]
        places += [(("blanks", spot), text) for spot, text in enumerate(connector.blanks)]
        size = (connector.rows, connector.columns)
        for where, text in places:
            spot = parse_spot(text)
            if spot is None or not is_inside(spot, *size):
                yield Flaw(
                    ("connectors", plug, *where),
                    _words(text, spot, *size),
                    f"write a place from `a1` to `{Spot(*size).label}`, or mend `rows` and "
                    "`columns`",
                )


def _words(text: str, spot: Spot | None, rows: int, columns: int) -> str:
    if spot is None:
        return f"`{text}` is no place in a connector"
    return f"`{text}` lies outside: the connector has {rows} by {columns} places"
