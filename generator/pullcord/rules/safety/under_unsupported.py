"""Nobody goes under a machine that may fall.

A jack, a hoist or a tipped-up machine can let go without a sound. On every way to a step where
hands or head go under the machine (`works-under`), an earlier step must put stands or blocks under
it (`supports: machine`), and nothing may have raised or lowered it since.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.conflicts import check_conflicts
from pullcord.safety.forbidden import FORBIDDEN

ID = "under-unsupported"

FAILING = """
procedure: no-drive
title: Does not move
symptom: The engine runs but the machine does not move.
about: A made-up example.
start: lift
causes:
  belt: {title: The belt is worn, remedy: Fit a new belt and lower the machine., lowers: machine}
steps:
  lift:
    title: Lift it
    do: Jack the front up.
    raises: machine
    then: step look
  look:
    title: Look at the belt
    do: Look at the belt from below.
    works-under: machine
    then: cause belt
"""

MENDED = FAILING.replace(
    "    then: step look",
    """    then: step stands
  stands:
    title: Put it on stands
    do: Set the frame down on two stands and try to rock it.
    supports: machine
    then: step look""",
)

MEND = (
    "put stands under it (`supports: machine`) in a step of its own before this one, on every way"
)


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every step or remedy that may put someone under a machine that may fall."""
    yield from check_conflicts(procedure, library, FORBIDDEN[ID], MEND)
