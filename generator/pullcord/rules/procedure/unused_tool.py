"""Every tool that is listed is needed by a step.

Nobody should look for a tool, or buy one, that is then not used. If a step needs it, say so there,
so that the step can say it too.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "unused-tool"

FAILING = example(
    """\
tools:
  bucket:
    title: A bucket
"""
)

MENDED = FAILING.replace("and look for water.", "and look for water.\n    needs: bucket")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every listed tool that no step needs."""
    used = {tool for step in procedure.steps.values() for tool in step.needs}
    for tool in procedure.tools:
        if tool not in used:
            yield Flaw(
                ("tools", tool),
                f"no step needs the tool `{tool}`",
                f"add `needs: {tool}` to the step that does, or delete it",
            )
