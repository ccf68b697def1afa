"""Small random procedures without loops, for tests that must hold for any of them."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from pullcord.model.procedure import Procedure

WORDS = st.text("abWi gΩ–±<&\"'\\", min_size=1, max_size=60).map(lambda text: f"x{text}")


@st.composite
def procedures(draw: st.DrawFn) -> Procedure:
    """Draw a procedure of up to seven steps whose answers lead down, to causes or out."""
    count = draw(st.integers(1, 7))
    causes = draw(st.integers(1, 4))
    steps: dict[str, Any] = {}
    for number in range(count):
        ends = [*(f"cause c{n}" for n in range(causes)), "done", "procedure other"]
        later = [f"step s{n}" for n in range(number + 1, count)]
        targets = draw(st.lists(st.sampled_from([*later, *later, *ends]), max_size=4))
        steps[f"s{number}"] = {"title": draw(WORDS), "do": "d", **ways(draw, targets)}
    return Procedure.model_validate(
        {
            "procedure": "random",
            "title": draw(WORDS),
            "symptom": "s",
            "about": "a",
            "start": "s0",
            "causes": {f"c{n}": {"title": draw(WORDS), "remedy": "r"} for n in range(causes)},
            "steps": steps,
        }
    )


def ways(draw: st.DrawFn, targets: list[str]) -> dict[str, Any]:
    """Draw the answers of a check, or the `then` of a step with one way out or none."""
    if len(targets) < 2:
        return {"then": targets[0] if targets else "done"}
    answers = {f"{draw(WORDS)}{number}": target for number, target in enumerate(targets)}
    return {"ask": draw(WORDS), "answers": answers}
