"""Petrol is opened only at an engine that has cooled.

Vapour does not need a spark: a silencer that has just run is hot enough to light it. Nobody knows
what the machine did before the first step, so on every way to a step that opens petrol there must
be one that gives the engine time to cool (`cools: engine`); and another one after every step that
runs the engine or does hot work.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.conflicts import check_conflicts
from pullcord.safety.forbidden import FORBIDDEN

ID = "petrol-near-hot-engine"

FAILING = """
procedure: wont-idle
title: Will not idle
symptom: The engine dies as soon as the throttle closes.
about: A made-up example.
start: air
causes:
  jet: {title: The idle jet is blocked, remedy: Clean the jet and refit the bowl., closes: petrol,
        clears: vapour}
steps:
  air:
    title: Go outdoors
    do: Push the machine outdoors and try the stop switch.
    arranges: [fresh-air, way-to-stop]
    then: step run
  run:
    title: Run it
    do: Run the engine for a minute and stop it.
    makes: running
    then: step bowl
  bowl:
    title: Look into the float bowl
    do: Take the float bowl off.
    opens: petrol
    then: cause jet
"""

MENDED = FAILING.replace(
    "    then: step bowl",
    """    then: step wait
  wait:
    title: Let it cool
    do: Wait until the silencer can be touched.
    cools: engine
    then: step bowl""",
)

MEND = "let the engine cool (`cools: engine`) in a step before petrol is opened, on every way"


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every step or remedy that may open petrol at a hot engine."""
    yield from check_conflicts(procedure, library, FORBIDDEN[ID], MEND)
