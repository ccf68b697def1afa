"""No guard comes off, and nobody goes under, while the machine may move.

A guard is taken off (`opens: guard`) and the underside is reached (`works-under`) only when the
engine has been stopped (`stops: engine`); and nothing is cranked, run or driven in the step in
which someone is under the machine.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.conflicts import check_conflicts
from pullcord.safety.forbidden import FORBIDDEN

ID = "near-moving-machine"

FAILING = """
procedure: rattles
title: Rattles
symptom: Something rattles under the cover while the engine runs.
about: A made-up example.
start: ready
causes:
  loose-cover: {title: The cover is loose, remedy: Tighten the cover., closes: guard}
steps:
  ready:
    title: Make ready
    do: Push the machine outdoors and try the stop switch.
    arranges: [fresh-air, way-to-stop]
    then: step start
  start:
    title: Start it
    do: Start the engine and listen.
    starts: engine
    then: step look
  look:
    title: Look under the cover
    do: Take the cover off.
    opens: guard
    then: step stop
  stop:
    title: Stop it
    do: Stop the engine.
    stops: engine
    then: cause loose-cover
"""

MENDED = (
    FAILING.replace("then: step look", "then: step stop", 1)
    .replace(
        "    opens: guard\n    then: step stop", "    opens: guard\n    then: cause loose-cover"
    )
    .replace(
        "    stops: engine\n    then: cause loose-cover", "    stops: engine\n    then: step look"
    )
)

MEND = "stop the engine (`stops: engine`) in a step before this one, on every way"


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every step or remedy with hands in a machine that may move."""
    yield from check_conflicts(procedure, library, FORBIDDEN[ID], MEND)
