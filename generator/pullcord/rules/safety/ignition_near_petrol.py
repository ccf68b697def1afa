"""No spark, flame, hot work or running engine while petrol may be open.

Petrol gives off vapour at any temperature a shop ever has, the vapour creeps along the floor, and
a spark you cannot see is enough. On every way that leads to a spark, a flame, hot work, a running
engine, or to a battery being connected or disconnected, the petrol must have been closed
(`closes: petrol`) and the vapour cleared (`clears: vapour`) in an EARLIER step. Cranking counts as
a source of ignition too, unless the ignition is disabled and the battery disconnected. Flames and
hot work are refused even where petrol is only near.

The other way round it is the same: petrol must not be opened beside an engine that was left
running.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.conflicts import check_conflicts
from pullcord.safety.forbidden import FORBIDDEN

ID = "ignition-near-petrol"

FAILING = """
procedure: no-spark
title: No spark
symptom: The engine spins but there is no spark at the plug.
about: A made-up example.
start: bowl
causes:
  bad-plug:
    title: The plug is dead
    remedy: Fit a new plug. Refit the bowl and wipe up.
    closes: petrol
    clears: vapour
steps:
  bowl:
    title: Look into the float bowl
    do: Let the engine cool, then take the float bowl off.
    cools: engine
    opens: petrol
    then: step spark
  spark:
    title: Look for a spark
    do: Spin the engine with a plug laid on bare metal.
    makes: spark
    ask: Do you see a spark?
    answers: {a spark: step refit, none: cause bad-plug}
  refit:
    title: Refit the bowl
    do: Refit the bowl and wipe up.
    closes: petrol
    clears: vapour
    then: done
"""

MENDED = (
    FAILING.replace("then: step spark", "then: step refit")
    .replace("then: done", "then: step spark")
    .replace("a spark: step refit", "a spark: done")
    .replace(
        "    remedy: Fit a new plug. Refit the bowl and wipe up.\n", "    remedy: Fit a new plug.\n"
    )
    .replace("    closes: petrol\n    clears: vapour\nsteps:", "steps:")
)

MEND = (
    "close the petrol and clear the vapour (`closes: petrol`, `clears: vapour`) in a step before "
    "this one, on every way"
)


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every step or remedy where petrol may meet a source of ignition."""
    yield from check_conflicts(procedure, library, FORBIDDEN[ID], MEND)
