"""A probe that goes to `connector.pin` goes to a pin that some machine's plug has.

On a machine whose sheet has the pin, the page draws the plug and marks it; for any other machine
the place is said in words. Where sheets have a plug of that name, but none has such a pin, a letter
is wrong somewhere, and the drawing is missing where it is needed.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.asked import asked_of, fitting_machines
from pullcord.readings.sheet import is_pin

ID = "unknown-probe"

FAILING = {
    "measure-coil.yaml": """
procedure: measure-coil
title: Measure the coil
symptom: There is no spark.
about: A made-up example.
start: coil
causes:
  coil: {title: The coil is broken, remedy: Fit another.}
steps:
  coil:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: unit.sauce, against: ground, general: 200-300 ohm,
              source: common practice}
    answers: {below: cause coil, within: done, above: cause coil}
""",
    "old-bike.yaml": """
machine: old-bike
title: Old bike
kind: farm-bike
connectors:
  unit:
    title: Ignition unit
    rows: 1
    columns: 1
    pins:
      source: {at: a1, wire: BK/RD, function: Source coil}
""",
}

MENDED = FAILING | {"measure-coil.yaml": FAILING["measure-coil.yaml"].replace("sauce", "source")}


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every probe on a pin that no plug of that name has."""
    machines = list(fitting_machines(procedure, library))
    for asked in asked_of(procedure):
        for key, place in (("at", asked.reading.at), ("against", asked.reading.against or "")):
            if not is_pin(place):
                continue
            plug, _, pin = place.strip().partition(".")
            having = [machine for machine in machines if plug in machine.connectors]
            known = {name: None for each in having for name in each.connectors[plug].pins}
            if having and pin not in known:
                yield Flaw(
                    ("steps", asked.name, "reading", key),
                    f"no pin `{pin}` on the `{plug}` of {listed(each.machine for each in having)}",
                    did_you_mean(pin, known, f"its pins are {listed(known)}"),
                )
