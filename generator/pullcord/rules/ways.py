"""Ways through a procedure, told step by step."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pullcord.finding import Place
from pullcord.graph import ways_out
from pullcord.model.procedure import Procedure


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
