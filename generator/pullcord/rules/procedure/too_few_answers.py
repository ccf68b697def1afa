"""A check has at least two answers.

A question with one answer decides nothing; and if something else is seen, the reader is lost.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "too-few-answers"

FAILING = example(
    """\
causes:
  air-leak:
    title: Air leak on the suction side
    remedy: Fit a new hose washer and tighten the clamps.
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: cause air-leak
"""
)

MENDED = FAILING.replace("full: cause air-leak", "full: cause air-leak\n      not full: done")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every check with a single answer."""
    for name, step in procedure.steps.items():
        if len(step.answers) == 1:
            yield Flaw(
                ("steps", name, "answers"),
                f"step `{name}` has only one answer",
                "say what else may be seen and where that leads; if nothing is asked, use `then`",
            )
