"""A step that touches petrol says so.

The caution box before the instruction, and the proof that no spark can meet open petrol, come from
what a step declares. So a step or a remedy that speaks of petrol, a tank, a float bowl or a fuel
line declares what it does: `opens: petrol`, `closes: petrol`, `fits: auxiliary-tank`. If it only
comes close to petrol, `near: petrol` is enough.

This looks for words and does not understand them. When it is wrong, `near: petrol` costs a caution
that is not needed; that is better than one that is missing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example
from pullcord.rules.speech import FUEL, Topic, undeclared

ID = "fuel-undeclared"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Open the petrol tap, then take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)

MENDED = FAILING.replace("    ask:", "    near: petrol\n    ask:")


TOPIC = Topic(
    words=FUEL,
    stems=re.compile(
        "petrol|gasoline|fuel|petcock|bulb|mix|fluid|spray|float|bowl|jet|flood|carbur|tank"
    ),
    declared_by={
        "opens": frozenset({"petrol"}),
        "closes": frozenset({"petrol"}),
        "near": frozenset({"petrol"}),
        "fits": frozenset({"auxiliary-tank"}),
        "takes_off": frozenset({"auxiliary-tank"}),
        "pressurises": frozenset({"tank"}),
        "releases": frozenset({"tank"}),
    },
    message="`{}` speaks of petrol, but nothing here declares it, so no caution would be shown",
    mend="add `near: petrol`, or what is done: `opens: petrol`, `closes: petrol`",
)


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every step and remedy that speaks of petrol and declares nothing."""
    yield from undeclared(procedure, TOPIC)
