"""An instruction can be read at arm's length.

The tablet leans against the machine and the hands are dirty. About forty-five words fit on it in
letters that can be read from where one works; after that the reader has to touch the screen, and
what was at the top is forgotten. Two short steps are easier than one long one.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "step-too-long"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: >-
      Take out the filler plug and look for water, and while you are there look at the washer of the
      plug, at the thread, at the hose and its clamps, at the strainer in the pond and at whatever
      else you come by that looks as if it could let in air.
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)

MENDED = example(
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
    ask: Is the washer whole?
    answers:
      whole: done
      torn: cause air-leak
"""
)


MOST_WORDS = 45
"""Four to five lines of the instruction's type on a page 820 px wide, which leaves room for the
caution boxes above and the answers below. The choice is ours; there is no source for it."""


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every instruction that has too many words."""
    for name, step in procedure.steps.items():
        words = len(step.do.split())
        if words > MOST_WORDS:
            yield Flaw(
                ("steps", name, "do"),
                f"this instruction has {words} words; up to {MOST_WORDS} can be read at arm's "
                "length without touching the screen",
                "split it into two steps, or move the reason to `why:`",
            )
