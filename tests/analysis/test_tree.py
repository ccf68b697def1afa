"""What can be walked, and what stands where."""

from __future__ import annotations

from typing import Any

import pytest

from pullcord.analysis.tree import UnwalkableError, count_paths, paths_to, read_tree
from tests.analysis.making import make_procedure

LOOK: dict[str, Any] = {"ask": "?", "answers": {"bad": "cause worn", "good": "step try"}}
TRY: dict[str, Any] = {"ask": "?", "answers": {"bad": "cause dead", "good": "done"}}
CAUSES: dict[str, Any] = {"worn": {}, "dead": {}, "never": {}}

UNWALKABLE = {
    "no start": ({"look": LOOK, "try": TRY}, "nowhere", "no step `nowhere`"),
    "circle": ({"look": LOOK, "try": {"then": "step look"}}, "look", "circle"),
    "no such step": ({"look": LOOK}, "look", "no step `try`"),
    "no such cause": ({"look": {"then": "cause odd"}}, "look", "no cause `odd`"),
    "dead end": ({"look": LOOK, "try": {}}, "look", "`try` leads nowhere"),
}


@pytest.mark.parametrize(("steps", "start", "words"), UNWALKABLE.values(), ids=UNWALKABLE)
def test_what_cannot_be_walked_is_refused(
    steps: dict[str, dict[str, Any]], start: str, words: str
) -> None:
    """The error says in a few words why."""
    with pytest.raises(UnwalkableError, match=words):
        read_tree(make_procedure(steps, CAUSES, start=start))


def test_what_no_way_leads_to_is_told_apart_from_outcomes() -> None:
    """Causes out of reach are listed; hand-overs and `done` come after the causes."""
    again = {"ask": "?", "answers": {"bad": "cause dead", "good": "procedure other"}}
    steps = {"look": LOOK, "try": {**TRY, "answers": {"bad": "step again", "good": "done"}}}
    tree = read_tree(make_procedure({**steps, "again": again, "idle": TRY}, CAUSES))
    assert tree.outcomes == ("cause:worn", "cause:dead", "done", "procedure:other")
    assert tree.unreached == ("never",)
    assert tree.order == ("look", "try", "again")


def test_paths_tell_each_step_and_its_answer() -> None:
    """A step that asks nothing stands with an empty answer; answers to one place count apart."""
    steps = {
        "open": {"then": "step look"},
        "look": {"ask": "?", "answers": {"bent": "cause worn", "cracked": "cause worn"}},
    }
    tree = read_tree(make_procedure(steps, {"worn": {}}))
    assert paths_to(tree, "cause:worn") == (
        (("open", ""), ("look", "bent")),
        (("open", ""), ("look", "cracked")),
    )
    assert paths_to(tree, "cause:worn", most=1) == ((("open", ""), ("look", "bent")),)
    assert count_paths(tree) == {"cause:worn": 2}
    assert tree.always_before == {"open": (), "look": ("open",)}
