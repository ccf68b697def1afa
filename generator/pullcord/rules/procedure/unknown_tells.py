"""What an answer tells of is there.

`tells` says for an answer which other causes give it too. The answer must be one of the step's own,
and the causes must be causes of the procedure.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "unknown-tells"

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
    tells:
      not full: air-leek
"""
)

MENDED = FAILING.replace("air-leek", "air-leak")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every answer and every cause in `tells` that does not exist."""
    for name, step in procedure.steps.items():
        for answer, causes in step.tells.items():
            place = ("steps", name, "tells", answer)
            if answer not in step.answers:
                mend = did_you_mean(answer, step.answers, "write the answer as it stands above")
                yield Flaw(place, f"step `{name}` has no answer `{answer}`", mend, is_key=True)
            for number, cause in enumerate(causes):
                if cause not in procedure.causes:
                    mend = did_you_mean(cause, procedure.causes, "delete it, or add that cause")
                    yield Flaw((*place, number), f"there is no cause called `{cause}`", mend)
