"""`below`, `within` and `above` need limits from somewhere.

A reading takes its limits from the machine's sheet (`limits`) and falls back on `general`. If no
sheet of a machine the procedure fits has the value, and there is nothing to fall back on, nobody
can say what the reading means.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.asked import Asked, asked_of, fitting_machines
from pullcord.readings.sheet import value_limits
from pullcord.rules.example import example

ID = "no-limits"

FAILING = example("""
steps:
  casing:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: the coil's two pins, limits: source-coil}
    answers:
      below: cause dry-casing
      within: cause air-leak
      above: cause dry-casing
""")

MENDED = FAILING.replace(
    "limits: source-coil",
    "limits: source-coil, general: 200-300 ohm, source: common practice",
)

MEND = "give it `general` limits to fall back on, with a `source`"


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every reading whose limits neither a sheet nor the procedure gives."""
    for asked in asked_of(procedure):
        if asked.needs_limits and not asked.reading.general:
            yield from _without(asked, procedure, library)


def _without(asked: Asked, procedure: Procedure, library: Library | None) -> Iterator[Flaw]:
    name = asked.reading.limits
    if name is None:
        yield Flaw(("steps", asked.name, "reading"), "the reading has no limits at all", MEND)
        return
    machines = list(fitting_machines(procedure, library))
    if any(value_limits(machine.values.get(name)) for machine in machines):
        return
    known = [value for machine in machines for value in machine.values]
    near = did_you_mean(name, [value for value in known if value != name])
    yield Flaw(
        ("steps", asked.name, "reading", "limits"),
        f"no machine sheet gives `{name}`, and there are no general limits",
        f"{near} Otherwise {MEND}" if near else MEND,
    )
