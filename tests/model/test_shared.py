"""Procedures filled in from what they share."""

from __future__ import annotations

from typing import Any

import pytest

from pullcord.model.shared import Pieces, fill_in, gather_pieces

PLUG = {"title": "Try a known-good plug", "do": "Lay it on bare metal.", "needs": ["plug", "rag"]}
PIECES = gather_pieces(
    [
        {"shared": "bench", "steps": {"plug": PLUG}, "tools": {"plug": {"title": "A plug"}}},
        {"shared": "later", "steps": {"plug": {"title": "Another"}}, "causes": None},
    ]
)

CASES: dict[str, tuple[dict[str, Any], dict[str, Any]]] = {
    "what is not written is filled in": (
        {"steps": {"a": {"as": "plug", "then": "done"}}, "tools": {"plug": 1, "rag": 2}},
        {
            "steps": {"a": {**PLUG, "as": "plug", "then": "done"}},
            "tools": {"plug": 1, "rag": 2},
        },
    ),
    "one's own words stand": (
        {"steps": {"a": {"as": "plug", "title": "Mine", "needs": []}}},
        {"steps": {"a": {"as": "plug", "title": "Mine", "needs": [], "do": PLUG["do"]}}},
    ),
    "a shared tool comes along": (
        {"steps": {"a": {"needs": "plug"}}},
        {"steps": {"a": {"needs": "plug"}}, "tools": {"plug": {"title": "A plug"}}},
    ),
    "one's own tool stands": (
        {"steps": {"a": {"needs": "plug"}}, "tools": {"plug": {"title": "Mine"}}},
        {"steps": {"a": {"needs": "plug"}}, "tools": {"plug": {"title": "Mine"}}},
    ),
    "nonsense is left for the reader to complain of": (
        {"steps": {"a": 3, "b": {"as": ["plug"], "needs": [{}]}}, "causes": "x", "tools": [1]},
        {"steps": {"a": 3, "b": {"as": ["plug"], "needs": [{}]}}, "causes": "x", "tools": [1]},
    ),
}


@pytest.mark.parametrize(("data", "expected"), CASES.values(), ids=CASES)
def test_filling_in(data: dict[str, Any], expected: dict[str, Any]) -> None:
    """A key of one's own goes before the shared one, and of two files the first counts."""
    assert fill_in(data, PIECES).data == expected


def test_an_unknown_piece_is_a_flaw_with_the_nearest_name() -> None:
    """The author is shown the `as` and what was probably meant."""
    (flaw,) = fill_in({"steps": {"a": {"as": "plugg"}}}, PIECES).flaws
    assert (flaw.at, flaw.rule) == (("steps", "a", "as"), "unknown-piece")
    assert "plug" in flaw.mend


def test_nothing_shared_is_said() -> None:
    """Whoever shares nothing is not told a list of nothing."""
    (flaw,) = fill_in({"causes": {"a": {"as": "x"}}}, Pieces()).flaws
    assert "nothing is shared" in flaw.mend
