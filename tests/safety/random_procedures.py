"""Random small procedures without loops, and all their paths, followed one by one."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from hypothesis import strategies as st

from pullcord.model.procedure import Library, Procedure
from pullcord.safety.effects import state_leaving
from pullcord.safety.scope import Scope
from pullcord.safety.vocabulary import ROWS, State

PAIRS = [(row.verb, row.thing) for row in ROWS]


@st.composite
def keys(draw: st.DrawFn) -> dict[str, list[str]]:
    """Return up to three random effects, as an author writes them."""
    chosen = draw(st.lists(st.sampled_from(PAIRS), max_size=3, unique=True))
    return {verb: [thing for other, thing in chosen if other == verb] for verb, _ in chosen}


@st.composite
def procedures(draw: st.DrawFn, name: str = "first", hands_to: str = "") -> Procedure:
    """Return a procedure of up to six steps and two causes; every step leads further down."""
    count = draw(st.integers(1, 6))
    causes = {f"c{n}": {"title": f"C{n}", "remedy": "Mend it.", **draw(keys())} for n in range(2)}
    steps: dict[str, dict[str, Any]] = {}
    for number in range(count):
        ends = ["done", "cause c0", "cause c1", *([f"procedure {hands_to}"] if hands_to else [])]
        further = [f"step s{n}" for n in range(number + 1, count)] + ends
        heads = draw(st.lists(st.sampled_from(further), min_size=1, max_size=3))
        steps[f"s{number}"] = {
            "title": f"S{number}",
            "do": "Do it.",
            **draw(keys()),
            "answers": {f"answer {n}": head for n, head in enumerate(heads)},
        }
    return Procedure.model_validate(
        {
            "procedure": name,
            "title": "Random",
            "symptom": "Random.",
            "about": "Random.",
            "start": "s0",
            "causes": causes,
            "steps": steps,
        }
    )


@st.composite
def libraries(draw: st.DrawFn) -> Library:
    """Return two procedures, the first of which may hand over to the second."""
    return Library(
        procedures={
            "first": draw(procedures("first", hands_to="second")),
            "second": draw(procedures("second")),
        }
    )


def all_paths(scope: Scope, node: str) -> Iterator[tuple[str, ...]]:
    """Yield every path from a node to wherever it stops, found by plain recursion."""
    heads = list(scope.graph.successors(node))
    if not heads:
        yield (node,)
    for head in heads:
        for rest in all_paths(scope, head):
            yield (node, *rest)


def states_along(scope: Scope, path: tuple[str, ...]) -> Iterator[tuple[str, State]]:
    """Yield each node of a path with the state it is entered in, on this path alone."""
    state = scope.fresh
    for node in path:
        yield node, state
        state = state_leaving(state, scope.effects[node])
