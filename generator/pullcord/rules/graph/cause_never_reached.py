"""Every cause can be found.

A cause no answer leads to is never told to anybody, and its odds are counted for nothing. Either a
check is missing, or an answer leads elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from pullcord.finding import Flaw
from pullcord.model.procedure import Procedure
from pullcord.rules.example import example
from pullcord.rules.ways import meant_by_slips

ID = "cause-never-reached"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: done
      not full: cause dry-casing
"""
)

MENDED = FAILING.replace("full: done", "full: cause air-leak")


def check(procedure: Procedure, graph: nx.DiGraph) -> Iterator[Flaw]:
    """Yield a flaw for every cause that no answer names."""
    meant = meant_by_slips(graph, "cause", procedure.causes)
    for name in procedure.causes:
        if not graph.pred[f"cause:{name}"] and name not in meant:
            yield Flaw(
                ("causes", name),
                f"no answer leads to cause `{name}`",
                f"let an answer lead to it (`cause {name}`), or delete it",
            )
