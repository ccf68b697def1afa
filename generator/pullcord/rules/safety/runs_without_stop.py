"""The engine never runs before there is a way to stop it.

An engine whose stop switch was never tried, on a machine that others have wired, may not stop. On
every way to a step that runs the engine an earlier step must make a way to stop it ready
(`arranges: way-to-stop`): the switch tried, the fuel tap in reach, a lead to ground the ignition.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.conflicts import check_conflicts
from pullcord.safety.forbidden import FORBIDDEN

ID = "runs-without-stop"

FAILING = """
procedure: smokes
title: Smokes
symptom: There is blue smoke from the exhaust.
about: A made-up example.
start: outdoors
causes:
  rings: {title: The rings are worn, remedy: Have the engine overhauled.}
steps:
  outdoors:
    title: Go outdoors
    do: Push the machine outdoors.
    arranges: fresh-air
    then: step run
  run:
    title: Run it
    do: Run the engine for a minute, watch the smoke, and stop it.
    makes: running
    ask: What colour is the smoke?
    answers: {blue: cause rings, none: done}
"""

MENDED = FAILING.replace("arranges: fresh-air", "arranges: [fresh-air, way-to-stop]")

MEND = (
    "make a way to stop the engine ready (`arranges: way-to-stop`) in a step before this one, "
    "on every way"
)


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every step or remedy that may run an engine nobody can stop."""
    yield from check_conflicts(procedure, library, FORBIDDEN[ID], MEND)
