"""The start is one of the steps.

It is the first thing the reader does, so it must be there.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "unknown-start"

FAILING = example(
    """\
start: caseing
"""
)

MENDED = FAILING.replace("start: caseing", "start: casing")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw when no step has the name of the start."""
    if procedure.start not in procedure.steps:
        names = listed(list(procedure.steps)[:20])
        known = f"the steps are {names}" if names else "add a step of that name"
        yield Flaw(
            ("start",),
            f"there is no step called `{procedure.start}`",
            did_you_mean(procedure.start, procedure.steps, known),
        )
