"""Every step leads on.

A step with neither answers nor `then` leaves the reader standing there with the machine open. Where
a procedure ends because nothing is wrong any more, say `done`.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "dead-end"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: What do you see?
    answers:
      full: cause air-leak
      not full: step fill
  fill:
    title: Fill the casing
    do: Fill the casing to the filler plug and start again.
causes:
  air-leak:
    title: Air leak on the suction side
    remedy: Fit a new hose washer and tighten the clamps.
"""
)

MENDED = FAILING.replace("and start again.", "and start again.\n    then: done")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every step that asks nothing and leads nowhere."""
    for name, step in procedure.steps.items():
        if step.then is None and not step.answers and step.ask is None and step.reading is None:
            yield Flaw(
                ("steps", name),
                f"step `{name}` leads nowhere",
                "add `then:` with where to go on (`done` if the procedure ends here), or ask "
                "something",
            )
