"""How procedures stand together on the home page, in the list, in the finder and on the map."""

from __future__ import annotations

from pullcord.model.procedure import Library
from pullcord.pages.groups import in_order, name_groups
from tests.analysis.making import make_procedure
from tests.pages.make import KIT

LEAK = {"look": {"opens": "petrol", "then": "done"}}


def library(hand_overs: dict[str, list[str]], **stages: object) -> Library:
    """Return a library in which procedures hand over as told; `leak` is dangerous as it stands."""
    made = {}
    for name, heads in hand_overs.items():
        answers = {f"so {head}": f"procedure {head}" for head in heads}
        look = {"look": {"ask": "?", "answers": {**answers, "it": "cause it", "not so": "done"}}}
        made[name] = make_procedure(LEAK if name == "leak" else look, {"it": {}}, procedure=name)
    return Library.model_validate({"procedures": made, "stages": stages})


RUNS = {
    "title": "Runs",
    "means": "It does.",
    "proved-by": [{"procedure": "run"}],
    "looked-for-in": ["run", "start"],
}


def groups(known: Library) -> dict[str, tuple[str, ...]]:
    """Return the names in each group, by its id."""
    return {group.id: group.names for group in name_groups(KIT.words, known)}


def test_the_dangerous_then_the_stages_then_the_rest() -> None:
    """Each procedure once; a group with nothing in it is left out."""
    known = library(
        {"bogs": ["leak"], "leak": [], "run": ["bogs"], "own": []},
        runs=RUNS,
        rides={"title": "Rides", "means": "It does."},
    )
    assert groups(known) == {"urgent": ("leak",), "to-runs": ("run", "bogs"), "other": ("own",)}
    assert in_order(name_groups(KIT.words, known)) == ("leak", "run", "bogs", "own")


def test_in_a_stage_what_it_names_comes_first_then_what_hands_over_first() -> None:
    """As one would go through them: a procedure stands before those it leads to."""
    known = library({"a": [], "b": ["a"], "c": ["b"], "run": ["c"], "start": []}, runs=RUNS)
    assert groups(known)["to-runs"] == ("run", "start", "c", "b", "a")


def test_hand_overs_in_a_circle_leave_the_order_of_the_library() -> None:
    """A rule reports the circle; nothing falls over."""
    known = library({"b": ["a"], "a": ["b"]})
    assert groups(known) == {"other": ("b", "a")}


def test_a_hand_over_to_what_is_not_there_is_passed_over() -> None:
    """So does a procedure whose file could not be read."""
    assert groups(library({"a": ["lost"]})) == {"other": ("a",)}
