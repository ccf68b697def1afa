"""How long a review takes, and how that grows: `.venv/bin/python benchmarks/analysis.py`.

Three shapes of made-up procedures: a run of checks, a tree that sorts causes, and such a tree with
actions between its checks. Processor seconds of this process; compare ratios, not seconds.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from time import process_time
from typing import Any

from pullcord.analysis.review import review
from pullcord.model.procedure import Procedure

SIZES = (10, 20, 40, 80)
"""Causes; 40 with actions is a procedure of some 60 steps."""

Steps = dict[str, dict[str, Any]]


def main() -> None:
    """Print a line for each shape and size."""
    print(f"{'shape':10} {'causes':>6} {'steps':>6} {'seconds':>8} {'growth':>7}  plan")
    for name, shape in SHAPES.items():
        before = None
        for size in SIZES:
            procedure = make(shape, size)
            start = process_time()
            found = review(procedure)
            seconds = process_time() - start
            growth = f"{seconds / before:.1f}x" if before else ""
            optimum = found.presuming.optimum
            gap = "proven" if optimum.is_proven else f"at least {optimum.at_least:.0f}"
            plan = f"{optimum.minutes:.0f} minutes, {gap}, {optimum.looks} looks"
            steps = len(procedure.steps)
            print(f"{name:10} {size:6} {steps:6} {seconds:8.2f} {growth:>7}  {plan}")
            before = seconds


def make(shape: Callable[[list[str], random.Random, Steps], str], size: int) -> Procedure:
    """Return a procedure of a shape; the same every time."""
    chance = random.Random(size)  # noqa: S311 - not for secrets
    causes = [f"c{place}" for place in range(size)]
    steps: Steps = {}
    start = shape(causes, chance, steps).removeprefix("step ")
    return Procedure.model_validate(
        {
            "procedure": "made-up",
            "title": "Made up",
            "symptom": "It is slow.",
            "about": "For timing.",
            "start": start,
            "steps": {name: {"title": name, "do": name, **step} for name, step in steps.items()},
            "causes": {
                name: {"title": name, "remedy": name, "odds": chance.randint(1, 20)}
                for name in causes
            },
        }
    )


def run(causes: list[str], chance: random.Random, steps: Steps) -> str:
    """Add checks in a row, each naming one cause."""
    for place, cause in enumerate(causes):
        onward = f"step k{place + 1}" if place + 1 < len(causes) else "done"
        answers = {"bad": f"cause {cause}", "good": onward}
        steps[f"k{place}"] = {"ask": "?", "minutes": chance.randint(1, 30), "answers": answers}
    return "step k0"


def tree(causes: list[str], chance: random.Random, steps: Steps) -> str:
    """Add checks that sort the causes into two parts again and again, some of them one by one."""
    if len(causes) == 1:
        return f"cause {causes[0]}"
    name = f"k{len(steps)}"
    step = steps[name] = {"ask": "?", "minutes": chance.randint(1, 30)}
    first = 1 if chance.random() < 0.4 else chance.randint(1, len(causes) - 1)
    parts = causes[:first], causes[first:]
    step["answers"] = {f"a{i}": tree(part, chance, steps) for i, part in enumerate(parts)}
    return f"step {name}"


def tree_with_actions(causes: list[str], chance: random.Random, steps: Steps) -> str:
    """Add such a tree, with an action before every other check."""
    start = tree(causes, chance, steps)
    for name in list(steps)[1::2]:
        steps[f"x{name}"] = {"minutes": chance.randint(1, 10), "then": f"step {name}"}
        for step in steps.values():
            answers = step.get("answers", {})
            for answer in (a for a, target in answers.items() if target == f"step {name}"):
                answers[answer] = f"step x{name}"
    return start


SHAPES = {"run": run, "tree": tree, "actions": tree_with_actions}

if __name__ == "__main__":
    main()
