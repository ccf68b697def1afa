"""Procedures do not hand over to one another in a circle.

A person sent from one procedure to the next and back again has no end in sight, and neither
procedure can be proved safe, for what the one leaves open the other begins with.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw, Place
from pullcord.graph import find_loops, library_graph, ways_out
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "cycle-across-procedures"

_OTHER = """\
procedure: no-flow
title: Pump primes, but gives no water
symptom: The casing is full, but nothing comes out.
about: For a self-priming pump whose engine runs well.
start: outlet
causes:
  blocked:
    title: Something is stuck in the outlet
    remedy: Take the outlet hose off and clear it.
steps:
  outlet:
    title: Outlet
    do: Look into the outlet.
    ask: Is it free?
    answers:
      free: procedure no-prime
      blocked: cause blocked
"""
_FIRST = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: What do you see?
    answers:
      full: procedure no-flow
      not full: cause dry-casing
      bubbles: cause air-leak
"""
)

FAILING = {"no-flow.yaml": _OTHER, "no-prime.yaml": _FIRST}

MENDED = {
    "no-flow.yaml": _OTHER.replace("free: procedure no-prime", "free: done"),
    "no-prime.yaml": _FIRST,
}


def check(library: Library) -> Iterator[tuple[str, Flaw]]:
    """Yield a procedure and a flaw for every knot of hand-overs, told from one to the next."""
    for loop in find_loops(library_graph(library)):
        legs = zip(loop, (*loop[1:], loop[0]), strict=True)
        ways = [(name, *_way(library.procedures[name], to), to) for name, to in legs]
        lines = [f"`{name}`, {words}: `{to}`" for name, _, words, to in ways]
        message = "\n".join(["these procedures hand over to one another in a circle:", *lines])
        mend = "let one of these answers lead to a cause or a step of its own, or to `done`"
        yield loop[0], Flaw(ways[0][1], message, mend)


def _way(procedure: Procedure, to: str) -> tuple[Place, str]:
    for name, step in procedure.steps.items():
        for place, answer, target in ways_out(name, step):
            if target.kind == "procedure" and target.name == to:
                return place, f"step `{name}`, answer `{answer}`" if answer else f"step `{name}`"
    return (), ""
