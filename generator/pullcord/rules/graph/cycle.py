"""No way through a procedure goes round in a circle.

Whoever follows a circle never comes to an end, and in the guided walk the time left and the causes
still possible could not be told. If something is to be done again after a repair, let the remedy
say so, or hand over to the procedure that proves it.
"""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from pullcord.finding import Flaw
from pullcord.graph import find_loops
from pullcord.model.procedure import Procedure
from pullcord.rules.example import example
from pullcord.rules.ways import tell_loop, way_between

ID = "cycle"

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
    ask: Is the washer whole?
    answers:
      whole: step casing
      torn: cause air-leak
"""
)

MENDED = FAILING.replace("whole: step casing", "whole: done")


def check(procedure: Procedure, graph: nx.DiGraph) -> Iterator[Flaw]:
    """Yield a flaw for every knot of circles, with its shortest circle told step by step."""
    for loop in find_loops(graph):
        steps = [node.removeprefix("step:") for node in loop]
        place, _ = way_between(procedure, steps[-1], loop[0])
        yield Flaw(
            place,
            "\n".join(["these steps go round in a circle:", *tell_loop(procedure, steps)]),
            "let one of these answers lead to a cause, to a later step, or to `done`",
        )
