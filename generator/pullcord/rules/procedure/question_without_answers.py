"""A question has answers.

What is asked or measured decides where to go on, so every `ask` and every `reading` needs its
`answers`.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "question-without-answers"

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
    then: cause air-leak
"""
)

MENDED = FAILING.replace(
    "    then: cause air-leak",
    "    answers:\n      full: cause air-leak\n      not full: done",
)


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every check without answers."""
    for name, step in procedure.steps.items():
        key = "ask" if step.ask is not None else "reading" if step.reading is not None else None
        if key and not step.answers:
            yield Flaw(
                ("steps", name, key),
                f"step `{name}` asks something, but has no `answers`",
                "list the answers below `answers:`, each with where it leads",
            )
