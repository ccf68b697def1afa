"""Where procedures say by which signs they are known, every one of them does.

The finder leads from what somebody sees, hears, smells or feels to the procedures that have such a
sign. A procedure without any is never found there. A library in which no procedure has a sign has
no finder, and nothing is amiss; nor is it in a first draft that does not say yet in what other
words its symptom is told (`also-said`).
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.finder import signs_of
from pullcord.finding import Flaw
from pullcord.model.procedure import Library
from pullcord.rules.example import example

ID = "no-signs"

_WITH = example("signs:\n  seen: no water comes\n")

_OTHER = example("also-said: it runs dry\n").replace("no-prime", "no-flow", 1)

FAILING = {"no-flow.yaml": _OTHER, "no-prime.yaml": _WITH}

MENDED = {
    "no-flow.yaml": _OTHER.replace("about:", "signs:\n  heard: the pump rattles\nabout:", 1),
    "no-prime.yaml": _WITH,
}


def check(library: Library) -> Iterator[tuple[str, Flaw]]:
    """Yield a procedure and a flaw for every one without a sign where another has one."""
    procedures = library.procedures
    without = [name for name, each in procedures.items() if not any(signs_of(each))]
    if len(without) < len(procedures):
        for name in filter(lambda name: procedures[name].also_said, without):
            message = "it has no signs, so the finder never leads here"
            mend = "add `signs:` with what one sees, hears, smells or feels when it is this"
            yield name, Flaw(("procedure",), message, mend)
