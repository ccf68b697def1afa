"""A machine whose sheet lacks the value needs general limits to fall back on.

Missing values are no fault: the page leaves room to write them in. But where a procedure has no
`general` limits, its page for that machine cannot say what the reading means.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.nearest import listed
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.asked import asked_of, fitting_machines
from pullcord.readings.sheet import value_limits

ID = "not-on-sheet"

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
    reading: {quantity: resistance, at: the coil's two pins, limits: source-coil}
    answers: {below: cause coil, within: done, above: cause coil}
""",
    "old-bike.yaml": """
machine: old-bike
title: Old bike
kind: farm-bike
values:
  source-coil: {limits: 200-300 ohm, source: measured from a good one}
""",
    "old-pump.yaml": """
machine: old-pump
title: Old pump
kind: pump
""",
}

MENDED = FAILING | {
    "measure-coil.yaml": FAILING["measure-coil.yaml"].replace(
        "limits: source-coil", "limits: source-coil, general: 100-500 ohm, source: common practice"
    )
}


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw where some sheets give the value and others leave the page without limits."""
    for asked in asked_of(procedure):
        name = asked.reading.limits
        if name is None or asked.reading.general or not asked.needs_limits:
            continue
        machines = list(fitting_machines(procedure, library))
        without = [
            machine.machine for machine in machines if not value_limits(machine.values.get(name))
        ]
        if without and len(without) < len(machines):
            yield Flaw(
                ("steps", asked.name, "reading", "limits"),
                f"the sheet of {listed(without)} has no `{name}`, and there are no general limits",
                "write the value into the sheet, or give the reading `general` limits",
            )
