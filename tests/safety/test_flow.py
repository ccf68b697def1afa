"""Following the state through a procedure is the same as walking every way through it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from pullcord.model.procedure import Library
from pullcord.safety.flow import (
    entering_states,
    nearest_passed,
    passed_on_every_way,
    put_right_on_every_way,
)
from pullcord.safety.scope import is_end, scope_before, scope_from, scope_of
from pullcord.safety.vocabulary import AT_START
from tests.safety.make import library, procedure
from tests.safety.random_procedures import all_paths, libraries, states_along

BOUNDED = settings(max_examples=100, deadline=None, print_blob=True)

DIAMOND = """
steps:
  ask: {answers: {left: step left, right: step right}}
  left: {fits: test-lead, then: step meet}
  right: {opens: petrol, then: step meet}
  meet: {then: step off}
  off: {takes-off: test-lead}
"""


def test_ways_that_meet_bring_what_either_brought() -> None:
    """May-analysis: after the join both may be so, though no one way has both."""
    entering = entering_states(scope_from(procedure(DIAMOND)))
    assert entering["example/step:meet"] - AT_START == {"test-lead", "petrol-open"}
    assert entering["example/done"] - AT_START == {"petrol-open"}


def test_put_right_means_on_every_way() -> None:
    """Must-analysis: the lead comes off after the join; petrol is closed on no way."""
    right = put_right_on_every_way(scope_from(procedure(DIAMOND)))
    assert right["example/step:ask"] == {"test-lead"}
    assert right["example/step:off"] == frozenset()


def test_one_way_out_that_does_not_is_enough_to_break_it() -> None:
    """A lead that one of two causes leaves on is not taken off on every way."""
    right = put_right_on_every_way(
        scope_from(
            procedure("""
            causes: {a: {takes-off: test-lead}, b: }
            steps: {fit: {fits: test-lead, answers: {one: cause a, two: cause b}}}
            """)
        )
    )
    assert right["example/step:fit"] == frozenset()


def test_a_step_that_protects_for_certain_is_passed_on_every_way() -> None:
    """Dominators: the step before the fork and the one after the join, not those between."""
    scope = scope_from(procedure(DIAMOND))
    assert passed_on_every_way(nearest_passed(scope), "example/step:off") == (
        "example/step:meet",
        "example/step:ask",
    )


def test_a_handover_carries_the_state_into_the_other_procedure() -> None:
    """What the first leaves fitted may be fitted throughout the second."""
    both = library(
        first="steps: {fit: {fits: bypass, then: procedure second}}",
        second="steps: {look: {}}",
    )
    second = both.procedures["second"]
    for scope in (scope_before(second, both), scope_of(both)):
        assert entering_states(scope)["second/step:look"] == {*AT_START, "bypass"}
    assert entering_states(scope_before(second))["second/step:look"] == AT_START


BROKEN = {
    "loop": "steps: {a: {fits: bypass, then: step b}, b: {answers: {x: step a, y: done}}}",
    "loop to itself": "steps: {a: {fits: bypass, answers: {again: step a, y: done}}}",
    "unknown step": "steps: {a: {fits: bypass, then: step nobody}}",
    "unknown cause": "steps: {a: {fits: bypass, then: cause nobody}}",
    "unknown procedure": "steps: {a: {fits: bypass, then: procedure nobody}}",
    "itself": "steps: {a: {fits: bypass, then: procedure example}}",
    "unreachable": "steps: {a: {fits: bypass}, b: {opens: petrol}}",
}


@pytest.mark.parametrize("text", BROKEN.values(), ids=BROKEN)
def test_a_broken_graph_is_followed_as_far_as_it_goes(text) -> None:
    """Loops and unknown targets are reported by others; here they only must not do harm."""
    broken = procedure(text)
    scope = scope_of(Library(procedures={"example": broken}))
    heads = scope.graph.successors("example/step:a")
    entering = entering_states(scope)
    assert all("bypass" in entering[head] for head in heads)
    assert put_right_on_every_way(scope).keys() == set(scope.graph)


def test_procedures_that_hand_over_in_a_circle_are_followed_once() -> None:
    """A circle of hand-overs is another rule's error; the analysis ends all the same."""
    circle = library(
        first="steps: {a: {fits: bypass, then: procedure second}}",
        second="steps: {b: {answers: {x: procedure first, y: done}}}",
    )
    entering = entering_states(scope_of(circle))
    assert "bypass" in entering["second/done"]


@given(libraries())
@BOUNDED
def test_what_may_hold_is_what_holds_on_some_path(both) -> None:
    """Forward analysis = the union over every path, walked one by one."""
    scope = scope_of(both)
    walked: dict[str, set[str]] = {}
    for start in scope.starts:
        for path in all_paths(scope, start):
            for node, state in states_along(scope, path):
                walked.setdefault(node, set()).update(state)
    assert entering_states(scope) == walked


@given(libraries())
@BOUNDED
def test_what_is_put_right_is_put_right_on_all_paths(both) -> None:
    """Backward analysis = the intersection over every path to an end, walked one by one."""
    scope = scope_from(both.procedures["first"], both)
    right = put_right_on_every_way(scope)
    for node in scope.graph:
        ended = [
            frozenset().union(*(scope.effects[other].ends for other in path[1:]))
            for path in all_paths(scope, node)
        ]
        assert all(is_end(scope, path[-1]) for path in all_paths(scope, node))
        assert right[node] == frozenset.intersection(*ended)


@given(libraries())
@BOUNDED
def test_dominators_are_the_nodes_on_all_paths(both) -> None:
    """A node is passed on every way exactly when every path from the start contains it."""
    scope = scope_from(both.procedures["first"], both)
    before: dict[str, list[set[str]]] = {}
    for path in all_paths(scope, scope.starts[0]):
        for position, node in enumerate(path):
            before.setdefault(node, []).append(set(path[:position]))
    nearest = nearest_passed(scope)
    for node, ways in before.items():
        assert set(passed_on_every_way(nearest, node)) == set.intersection(*ways)
