"""No flame, spark or hot work while a battery is being charged.

A battery on the charger gives off hydrogen, which burns with a bang. The charger comes off
(`disconnects: charger`) in a step before any flame, spark or hot work.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.conflicts import check_conflicts
from pullcord.safety.forbidden import FORBIDDEN

ID = "flame-near-charging"

FAILING = """
procedure: dead-battery
title: Flat battery
symptom: The starter only clicks.
about: A made-up example.
start: charge
causes:
  joint: {title: A joint has come loose, remedy: Take the charger off., disconnects: charger}
steps:
  charge:
    title: Charge it
    do: Put the battery on the charger for an evening.
    connects: charger
    then: step solder
  solder:
    title: Solder the joint
    do: Solder the loose joint.
    makes: hot-work
    then: cause joint
"""

MENDED = FAILING.replace(
    "remedy: Take the charger off., disconnects: charger", "remedy: See above."
)
MENDED = MENDED.replace(
    "    then: step solder",
    """    then: step charger-off
  charger-off:
    title: Take the charger off
    do: Switch the charger off, then take it off.
    disconnects: charger
    then: step solder""",
)

MEND = "take the charger off (`disconnects: charger`) in a step before this one, on every way"


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every step or remedy with a flame or spark at a battery being charged."""
    yield from check_conflicts(procedure, library, FORBIDDEN[ID], MEND)
