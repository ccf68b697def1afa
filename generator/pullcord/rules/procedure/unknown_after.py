"""What a step comes after is a step that is there.

`after` names the steps that must be done before this one in any order of checks, so each of them
must exist.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "unknown-after"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: step washer
      not full: cause dry-casing
  washer:
    title: Hose washer
    do: Unscrew the suction hose and look at its washer.
    after: [caseing]
    ask: Is the washer whole?
    answers:
      whole: done
      torn: cause air-leak
"""
)

MENDED = FAILING.replace("caseing", "casing")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every step named in `after` that does not exist."""
    for name, step in procedure.steps.items():
        for number, earlier in enumerate(step.after or ()):
            if earlier not in procedure.steps:
                yield Flaw(
                    ("steps", name, "after", number),
                    f"there is no step called `{earlier}`",
                    did_you_mean(earlier, procedure.steps, "delete it, or add that step"),
                )
