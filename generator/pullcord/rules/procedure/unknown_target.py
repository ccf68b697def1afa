"""Every answer leads to a step or a cause that is there.

An answer that points to a name nobody defined is mostly a slip of the finger; on the page it would
be a link to nowhere.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pullcord.finding import Flaw
from pullcord.graph import ways_out
from pullcord.model.nearest import nearest
from pullcord.model.procedure import Library, Procedure
from pullcord.model.target import Target
from pullcord.rules.example import example

ID = "unknown-target"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: cause air-leek
      not full: cause dry-casing
"""
)

MENDED = FAILING.replace("cause air-leek", "cause air-leak")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every way out to a step or cause that does not exist."""
    known: Mapping[str, Mapping[str, object]] = {
        "step": procedure.steps,
        "cause": procedure.causes,
    }
    for name, step in procedure.steps.items():
        for place, _, target in ways_out(name, step):
            if target.name not in known.get(target.kind, (target.name,)):
                yield Flaw(
                    place,
                    f"there is no {target.kind} called `{target.name}`",
                    _mend(target, known),
                    word=target.name,
                )


def _mend(target: Target, known: Mapping[str, Mapping[str, object]]) -> str:
    other = "cause" if target.kind == "step" else "step"
    if target.name in known[other]:
        return f"there is a {other} of that name: write `{other} {target.name}`"
    name = nearest(target.name, known[target.kind])
    return f"did you mean `{name}`?" if name else f"add a {target.kind} of that name"
