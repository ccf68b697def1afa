"""Stages a machine has no use for."""

from __future__ import annotations

import pytest

from pullcord.analysis.job.left_out import stages_without
from pullcord.model.stage import Stage

LIST = {"runs": (), "drives": ("runs",), "stops": ("runs",), "ride": ("drives", "stops")}

CASES: dict[str, tuple[dict[str, tuple[str, ...]], set[str], dict[str, tuple[str, ...]]]] = {
    "nothing": (LIST, set(), LIST),
    "one": (LIST, {"stops"}, {"runs": (), "drives": ("runs",), "ride": ("drives", "runs")}),
    "two in a row": (LIST, {"runs", "drives"}, {"stops": (), "ride": ("stops",)}),
    "one nobody knows": (LIST, {"flies"}, LIST),
    "one that names one nobody knows": ({"a": ("b",), "b": ("x",)}, {"b"}, {"a": ("x",)}),
    "a circle": ({"a": ("b",), "b": ("c",), "c": ("b",)}, {"b", "c"}, {"a": ()}),
}


@pytest.mark.parametrize(("stages", "left_out", "expected"), CASES.values(), ids=CASES)
def test_what_is_left(
    stages: dict[str, tuple[str, ...]],
    left_out: set[str],
    expected: dict[str, tuple[str, ...]],
) -> None:
    """What came after a stage left out comes after what that one came after."""
    whole = {name: Stage(title=name, means=name, after=after) for name, after in stages.items()}
    found = stages_without(whole, left_out)
    assert {name: stage.after for name, stage in found.items()} == expected
