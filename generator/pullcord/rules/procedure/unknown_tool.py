"""A step needs only tools that the procedure lists.

The list at the top is what someone gathers before they begin. A tool that turns up half way is a
walk back to the house with the machine open.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "unknown-tool"

FAILING = example(
    """\
tools:
  bucket:
    title: A bucket
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    needs: [bucket, bukket]
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)

MENDED = FAILING.replace("[bucket, bukket]", "bucket")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every tool of a step that is not listed."""
    listing = listed(procedure.tools)
    known = f"the tools are {listing}" if listing else "list it under `tools:`"
    for name, step in procedure.steps.items():
        for number, tool in enumerate(step.needs):
            if tool not in procedure.tools:
                yield Flaw(
                    ("steps", name, "needs", number),
                    f"`tools` lists no `{tool}`",
                    did_you_mean(tool, procedure.tools, known),
                )
