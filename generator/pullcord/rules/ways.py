"""Ways through a procedure, told step by step."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import islice

import networkx as nx

from pullcord.finding import Place
from pullcord.graph import ways_out
from pullcord.model.nearest import nearest
from pullcord.model.procedure import Procedure

_MOST_SLIPS = 50


def way_between(procedure: Procedure, step: str, target: str) -> tuple[Place, str]:
    """Return the place and the words of the first way from a step to a node, such as `step:x`."""
    for place, answer, to in ways_out(step, procedure.steps[step]):
        if to.node == target:
            return place, f"answer `{answer}`" if answer else "then"
    return ("steps", step), "then"


def tell_loop(procedure: Procedure, steps: Sequence[str]) -> Iterator[str]:
    """Yield one line for each step of a loop: the step, its answer, and where that leads."""
    for step, following in zip(steps, (*steps[1:], steps[0]), strict=True):
        _, words = way_between(procedure, step, f"step:{following}")
        yield f"step `{step}`, {words}: step `{following}`"


def meant_by_slips(graph: nx.DiGraph, kind: str, names: Collection[str]) -> set[str]:
    """Return the names that answers leading to an unknown name probably meant.

    That nothing leads to them is the slip's doing and needs no finding of its own.
    """
    led_to = (node.removeprefix(f"{kind}:") for node in graph if node.startswith(f"{kind}:"))
    unknown = islice((name for name in led_to if name not in names), _MOST_SLIPS)
    return {near for name in unknown if (near := nearest(name, names))}
