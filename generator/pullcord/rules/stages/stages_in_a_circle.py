"""Stages do not come after one another in a circle.

Each of them would wait for the others for good, and nothing that serves them could be bought.
"""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from pullcord.finding import Flaw
from pullcord.graph import find_loops
from pullcord.model.procedure import Library
from pullcord.model.stage import StageList

ID = "stages-in-a-circle"

MENDED = {
    "pump-stages.yaml": """\
stages: pump-stages
stage:
  primes: {title: Primes, means: It draws water by itself.}
  delivers: {title: Delivers, means: It fills the tank within the hour., after: primes}
"""
}

FAILING = {
    name: text.replace("by itself.}", "by itself., after: delivers}")
    for name, text in MENDED.items()
}


def check(stages: StageList, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every knot of stages, told from one to the next."""
    graph = nx.DiGraph()
    graph.add_nodes_from(stages.stage)
    for name, stage in stages.stage.items():
        graph.add_edges_from((name, before) for before in stage.after)
    for loop in find_loops(graph):
        way = " after ".join(f"`{name}`" for name in (*loop, loop[0]))
        message = f"these stages come after one another in a circle: {way}"
        yield Flaw(("stage", loop[0], "after"), message, "let one of them come after none of these")
