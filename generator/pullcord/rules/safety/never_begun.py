"""What is put right was brought about before.

A step that closes what no way to it has opened, or takes off what none has fitted, usually means
that an earlier step forgot to say what it does, and then its caution box is missing too. What a
neglected machine may well arrive with (somebody's bypass, pressure in a tyre, a hot engine, the
smell of petrol) may be put right without a word.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.ends import check_ever_begun

ID = "never-begun"

FAILING = """
procedure: wont-idle
title: Will not idle
symptom: The engine dies as soon as the throttle closes.
about: A made-up example.
start: bowl
causes:
  jet: {title: The jet is blocked, remedy: Clean the jet and refit the bowl., closes: petrol,
        clears: vapour}
steps:
  bowl:
    title: Look into the float bowl
    do: Let the engine cool. Take the float bowl off and look at the jet.
    cools: engine
    near: petrol
    then: cause jet
"""

MENDED = FAILING.replace("near: petrol", "opens: petrol")


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for everything put right that cannot have been brought about."""
    yield from check_ever_begun(procedure, library)
