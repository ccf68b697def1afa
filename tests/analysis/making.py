"""Small procedures to think about: written as steps and causes, or drawn by hypothesis."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from pullcord.analysis.odds import Odds, read_odds
from pullcord.analysis.table import Table, read_table
from pullcord.analysis.tree import Tree, read_tree
from pullcord.model.procedure import Procedure


def make_procedure(
    steps: dict[str, dict[str, Any]], causes: dict[str, dict[str, Any]], **more: Any
) -> Procedure:
    """Return a procedure; what only a reader needs is filled in."""
    return Procedure.model_validate(
        {
            "procedure": "try-out",
            "title": "A try-out",
            "symptom": "It does not go.",
            "about": "For trying out.",
            "start": next(iter(steps)),
            "steps": {name: {"title": name, "do": name, **step} for name, step in steps.items()},
            "causes": {name: {"title": name, "remedy": name, **c} for name, c in causes.items()},
            **more,
        }
    )


def read_all(procedure: Procedure) -> tuple[Tree, Table, Odds]:
    """Return what every analysis begins with."""
    tree = read_tree(procedure)
    return tree, read_table(tree), read_odds(tree)


def chain(odds: list[float], minutes: list[float], **step: Any) -> Procedure:
    """Return a run of checks k0, k1 ... each naming one cause c0, c1 ..., at the end `done`."""
    last = len(minutes) - 1
    onward = [f"step k{place + 1}" for place in range(last)] + ["done"]
    return make_procedure(
        {
            f"k{place}": {
                "ask": "Sound?",
                "minutes": minutes[place],
                "answers": {"bad": f"cause c{place}", "good": onward[place]},
                **step,
            }
            for place in range(len(minutes))
        },
        {f"c{place}": {"odds": share} for place, share in enumerate(odds)},
    )


@st.composite
def procedures(
    draw: st.DrawFn, most_steps: int = 6, most_causes: int = 4, extras: bool = True
) -> Procedure:
    """Draw an acyclic procedure whose first step leads on; some steps may never be reached."""
    size = draw(st.integers(1, most_steps))
    causes = [f"c{place}" for place in range(draw(st.integers(1, most_causes)))]
    ends = [f"cause {name}" for name in causes] + ["done", "procedure other"]
    steps = {}
    for place in range(size):
        later = [f"step k{further}" for further in range(place + 1, size)]
        # Later steps stand first and twice, so that deep procedures are common.
        targets = st.sampled_from(later + later + ends)
        steps[f"k{place}"] = draw(_steps(targets, causes, place, extras))
    odds = st.one_of(st.none(), st.integers(1, 9))
    return make_procedure(steps, {name: {"odds": draw(odds)} for name in causes})


@st.composite
def _steps(
    draw: st.DrawFn, targets: st.SearchStrategy[str], causes: list[str], place: int, extras: bool
) -> dict[str, Any]:
    minutes = draw(st.integers(0, 9))
    if draw(st.integers(0, 3)) == 0:
        return {"minutes": minutes, "then": draw(targets)}
    answers = {f"a{n}": draw(targets) for n in range(draw(st.integers(2, 3)))}
    step: dict[str, Any] = {"minutes": minutes, "ask": "?", "answers": answers}
    if extras and draw(st.integers(0, 2)) == 0:
        step["tells"] = {"a0": draw(st.lists(st.sampled_from(causes), max_size=2, unique=True))}
    if extras and place and draw(st.integers(0, 2)) == 0:
        earlier = st.sampled_from([f"k{before}" for before in range(place)])
        step["after"] = draw(st.lists(earlier, max_size=2, unique=True))
    return step


@st.composite
def sorting_trees(draw: st.DrawFn, most_causes: int = 6) -> Procedure:
    """Draw a procedure that sorts causes by splitting, with `tells` for most other causes."""
    causes = [f"c{place}" for place in range(draw(st.integers(2, most_causes)))]
    steps: dict[str, dict[str, Any]] = {}
    start = _split(draw, causes, steps).removeprefix("step ")
    for step in (step for step in steps.values() if "answers" in step):
        below = {name for answer in step["answers"] for name in step["reach"][answer]}
        for cause in (name for name in causes if name not in below):
            answers = draw(st.lists(st.sampled_from(list(step["answers"])), max_size=2))
            for answer in set(answers):
                step.setdefault("tells", {}).setdefault(answer, []).append(cause)
        del step["reach"]
    odds = {name: {"odds": draw(st.integers(1, 9))} for name in causes}
    return make_procedure(steps, odds, start=start)


def _split(draw: st.DrawFn, causes: list[str], steps: dict[str, dict[str, Any]]) -> str:
    """Add the steps that sort some causes; return the target that leads to them."""
    if len(causes) == 1:
        return f"cause {causes[0]}"
    name = f"k{len(steps)}"
    step = steps[name] = {"ask": "?", "minutes": draw(st.integers(0, 9)), "answers": {}}
    first = draw(st.integers(1, len(causes) - 1))
    parts = [causes[:first], causes[first:]]
    step["reach"] = {f"a{place}": part for place, part in enumerate(parts)}
    step["answers"] = {f"a{place}": _split(draw, part, steps) for place, part in enumerate(parts)}
    if draw(st.integers(0, 3)):
        return f"step {name}"
    steps[f"x{name}"] = {"minutes": draw(st.integers(0, 9)), "then": f"step {name}"}
    return f"step x{name}"
