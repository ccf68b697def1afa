"""Every answer is given once.

Two answers that differ only by a capital or a space look the same on a button, and lead to
different places.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "same-answer-twice"

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
      Full: done
"""
)

MENDED = FAILING.replace("      Full: done\n", "")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every answer that reads like an earlier one of its step."""
    for name, step in procedure.steps.items():
        first: dict[str, str] = {}
        for answer in step.answers:
            read = " ".join(answer.casefold().split())
            if read in first:
                yield Flaw(
                    ("steps", name, "answers", answer),
                    f"the answer `{answer}` reads the same as `{first[read]}`",
                    "delete one of the two, or say how they differ",
                    is_key=True,
                )
            first.setdefault(read, answer)
