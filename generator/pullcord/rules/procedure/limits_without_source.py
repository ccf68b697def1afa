"""General limits say where they come from.

Someone buys a part because of them. A named handbook, a standard, or `common practice` tells how
far they can be trusted on a machine whose sheet says nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "limits-without-source"

FAILING = example(
    """\
steps:
  coil:
    title: Source coil
    do: Unplug the ignition unit and measure across the source coil.
    reading:
      quantity: resistance
      at: source coil
      against: ground
      general: 200-300 ohm
    answers:
      below: cause coil-shorted
      within: done
      above: cause coil-open
start: coil
causes:
  coil-shorted:
    title: Source coil shorted
    remedy: Fit another source coil.
  coil-open:
    title: Source coil open
    remedy: Fit another source coil.
"""
)

MENDED = FAILING.replace(
    "general: 200-300 ohm", "general: 200-300 ohm\n      source: common practice"
)


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every reading whose general limits come from nowhere."""
    for name, step in procedure.steps.items():
        reading = step.reading
        if reading and reading.general is not None and reading.source is None:
            yield Flaw(
                ("steps", name, "reading", "general"),
                f"step `{name}` does not say where its general limits come from",
                "add `source:` below it, for instance `common practice`",
            )
