"""Answers belong to a question.

Without `ask` or `reading` the reader is offered answers to nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "answers-without-question"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)

MENDED = FAILING.replace("    answers:", "    ask: Is the casing full?\n    answers:")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every step that has answers and asks nothing."""
    for name, step in procedure.steps.items():
        if step.answers and step.ask is None and step.reading is None:
            yield Flaw(
                ("steps", name, "answers"),
                f"step `{name}` has answers, but asks nothing",
                "add `ask:` with the question, or `reading:` if a meter answers it",
            )
