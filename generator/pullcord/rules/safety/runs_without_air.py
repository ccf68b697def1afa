"""The engine never runs before fresh air has been seen to.

Exhaust gas kills without a smell, and an open door is not enough. On every way to a step that runs
the engine an earlier step must arrange for air (`arranges: fresh-air`): the machine outdoors, away
from windows and doors.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.conflicts import check_conflicts
from pullcord.safety.forbidden import FORBIDDEN

ID = "runs-without-air"

FAILING = """
procedure: smokes
title: Smokes
symptom: There is blue smoke from the exhaust.
about: A made-up example.
start: stop-switch
causes:
  rings: {title: The rings are worn, remedy: Have the engine overhauled.}
steps:
  stop-switch:
    title: Try the stop switch
    do: Make sure that the stop switch works.
    arranges: way-to-stop
    then: step run
  run:
    title: Run it
    do: Run the engine for a minute, watch the smoke, and stop it.
    makes: running
    ask: What colour is the smoke?
    answers: {blue: cause rings, none: done}
"""

MENDED = FAILING.replace("arranges: way-to-stop", "arranges: [way-to-stop, fresh-air]")

MEND = "take the machine outdoors (`arranges: fresh-air`) in a step before this one, on every way"


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every step or remedy that may run the engine without fresh air."""
    yield from check_conflicts(procedure, library, FORBIDDEN[ID], MEND)
