"""A step either asks or goes on.

With both `then` and `answers` nobody can tell which of the two holds.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "then-and-answers"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
    then: done
"""
)

MENDED = FAILING.replace("    then: done\n", "")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every step with both."""
    for name, step in procedure.steps.items():
        if step.then is not None and step.answers:
            yield Flaw(
                ("steps", name, "then"),
                f"step `{name}` has both `then` and `answers`",
                "keep `answers` if it asks something, else `then`",
            )
