"""Small procedures written in one line, for the tests of the safety analysis."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import yaml

from pullcord.model.procedure import Library, Procedure


def procedure(text: str, name: str = "example") -> Procedure:
    """Make a procedure from `steps:` and `causes:` alone; what no test looks at is filled in.

    The first step is the start. A step without a way out goes to `done`.
    """
    # Every scalar stays text, as in a procedure file.
    data: Mapping[str, Any] = yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506
    steps = {
        key: {"title": f"Title of {key}", "do": "Do it.", **_way_out(step or {})}
        for key, step in data["steps"].items()
    }
    causes = {
        key: {"title": f"Title of {key}", "remedy": "Mend it.", **(cause or {})}
        for key, cause in data.get("causes", {}).items()
    }
    return Procedure.model_validate(
        {
            "procedure": name,
            "title": "Example",
            "symptom": "Something is wrong.",
            "about": "A made-up example.",
            "start": next(iter(steps)),
            "causes": causes,
            "steps": steps,
        }
    )


def library(**texts: str) -> Library:
    """Make a library; a keyword `wont_idle` is the procedure `wont-idle`."""
    procedures = {
        key.replace("_", "-"): procedure(text, key.replace("_", "-")) for key, text in texts.items()
    }
    return Library(procedures=procedures)


def _way_out(step: Mapping[str, Any]) -> Mapping[str, Any]:
    return step if "then" in step or "answers" in step else {**step, "then": "done"}
