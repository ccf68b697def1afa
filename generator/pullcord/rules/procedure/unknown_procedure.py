"""A hand-over leads to a procedure that is there.

`procedure NAME` sends the reader on to another page of the same site, so that procedure must be one
of those that are built together.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.graph import ways_out
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "unknown-procedure"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: What do you see?
    answers:
      full: cause air-leak
      not full: cause dry-casing
      the engine has stopped: procedure wont-start
"""
)

MENDED = FAILING.replace("procedure wont-start", "done")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every hand-over to a procedure that no file holds."""
    for name, step in procedure.steps.items():
        for place, _, target in ways_out(name, step):
            if target.kind == "procedure" and not _is_there(target.name, library):
                yield Flaw(
                    place,
                    f"there is no procedure called `{target.name}`",
                    did_you_mean(target.name, library.procedures, "write it, or end with `done`"),
                    word=target.name,
                )


def _is_there(name: str, library: Library) -> bool:
    return name in library.procedures or name in library.unread
