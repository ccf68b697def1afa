"""A step that makes a spark says so.

Ignition voltage throws people off ladders, and a spark lights petrol vapour. So a step or a remedy
that speaks of sparks, the plug cap or lead, or of spinning the engine with the plug out declares
what it does: `makes: spark`, `disables: ignition`. If it only comes close to the high-voltage side,
`near: high-voltage` is enough.

This looks for words and does not understand them. When it is wrong, `near: high-voltage` costs a
caution that is not needed; that is better than one that is missing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example
from pullcord.rules.speech import SPARK, Topic, undeclared

ID = "spark-undeclared"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Pull the plug cap off, then take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)

MENDED = FAILING.replace("    ask:", "    near: high-voltage\n    ask:")


TOPIC = Topic(
    words=SPARK,
    stems=re.compile(r"spark|plug|high|\bht\b|ignition"),
    declared_by={
        "makes": frozenset({"spark"}),
        "near": frozenset({"high-voltage"}),
        "disables": frozenset({"ignition"}),
        "enables": frozenset({"ignition"}),
    },
    message="`{}` speaks of ignition, but nothing here declares it, so no caution would be shown",
    mend="add `near: high-voltage`, or what is done: `makes: spark`, `disables: ignition`",
)


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every step and remedy that speaks of a spark and declares nothing."""
    yield from undeclared(procedure, TOPIC)
