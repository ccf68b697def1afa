"""A conflict is reported exactly when some way really leads to it, and that way is printed."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.safety.conflicts import Conflict, check_conflicts, find_clashes
from pullcord.safety.effects import state_during
from pullcord.safety.flow import follow
from pullcord.safety.scope import scope_from
from pullcord.safety.vocabulary import CONDITIONS
from tests.safety.make import library, procedure
from tests.safety.random_procedures import all_paths, libraries, states_along

PETROL_AND_SPARK = (Conflict(frozenset({"spark"}), (frozenset({"petrol-open", "vapour"}),)),)
SPRAY = (
    Conflict(
        frozenset({"cranking"}), (frozenset({"plug-hole-open"}), frozenset({"ignition-live"}))
    ),
)


def test_the_way_is_printed_step_by_step() -> None:
    """Titles, answers and the place where it was opened, so that the author sees what to mend."""
    opened = procedure("""
    steps:
      look: {answers: {it drips: step bowl, dry: step spark}}
      bowl: {opens: petrol, then: step spark}
      spark: {makes: spark}
    """)
    (flaw,) = check_conflicts(opened, None, PETROL_AND_SPARK, "close it before")
    assert flaw.at == ("steps", "spark", "makes")
    assert flaw.message == (
        "step `spark`: a spark is made while petrol is open, on this way:\n"
        "  1. step `look` (Title of look) -> it drips\n"
        "  2. step `bowl` (Title of bowl) [here: petrol is open]\n"
        "  3. step `spark` (Title of spark) [here: a spark is made]"
    )
    assert flaw.mend == "close it before; every way there passes step `look`"


def test_conditions_of_different_ways_are_not_mixed() -> None:
    """Open hole with ignition off, or live ignition with the hole closed: neither is a conflict."""
    safe = procedure("""
    steps:
      ask: {answers: {out: step off, in: step crank}}
      off: {disables: ignition, then: step out}
      out: {opens: plug-hole, then: step crank}
      crank: {makes: cranking}
    """)
    assert list(check_conflicts(safe, None, SPRAY, "")) == []


def test_the_same_graph_with_one_way_that_forgets_is_a_conflict() -> None:
    """The twin of the case above: one way opens the hole without disabling the ignition."""
    unsafe = procedure("""
    steps:
      ask: {answers: {out: step off, in: step out}}
      off: {disables: ignition, then: step out}
      out: {opens: plug-hole, then: step crank}
      crank: {makes: cranking}
    """)
    (flaw,) = check_conflicts(unsafe, None, SPRAY, "")
    assert "step `ask` (Title of ask) -> in\n  2. step `out`" in flaw.message


def test_of_several_ways_the_shortest_is_printed() -> None:
    """Whoever mends reads as little as can show it, whichever answer stands first."""
    roundabout = procedure("""
    steps:
      bowl: {opens: petrol, answers: {a: step long, b: step spark}}
      long: {then: step longer}
      longer: {then: step spark}
      spark: {makes: spark}
    """)
    turned = procedure("""
    steps:
      bowl: {opens: petrol, answers: {a: step spark, b: step long}}
      long: {then: step longer}
      longer: {then: step spark}
      spark: {makes: spark}
    """)
    for each in (roundabout, turned):
        (flaw,) = check_conflicts(each, None, PETROL_AND_SPARK, "")
        assert "long" not in flaw.message
        assert "  2. step `spark`" in flaw.message


def test_a_step_that_does_both_is_in_conflict_with_itself() -> None:
    """Within one step the order is the reader's; the careful reading stands."""
    both = procedure("steps: {drain: {opens: petrol, closes: petrol, makes: spark}}")
    (flaw,) = check_conflicts(both, None, PETROL_AND_SPARK, "")
    assert flaw.at == ("steps", "drain", "makes")


def test_a_remedy_is_a_place_for_conflicts_too() -> None:
    """What a cause's remedy does counts like a step."""
    remedy = procedure("""
    causes: {coil: {makes: spark}}
    steps: {bowl: {opens: petrol, then: cause coil}}
    """)
    (flaw,) = check_conflicts(remedy, None, PETROL_AND_SPARK, "")
    assert flaw.at == ("causes", "coil", "makes")


def test_a_conflict_behind_a_handover_stands_at_the_answer_that_hands_over() -> None:
    """The second procedure is sound by itself: whoever handed open petrol to it must mend."""
    both = library(
        first="steps: {bowl: {opens: petrol, answers: {wet: procedure second, dry: done}}}",
        second="steps: {spark: {makes: spark}}",
    )
    (flaw,) = check_conflicts(both.procedures["first"], both, PETROL_AND_SPARK, "")
    assert flaw.at == ("steps", "bowl", "answers", "wet")
    assert "2. hands over to procedure `second`\n  3. step `spark` of procedure" in flaw.message
    assert list(check_conflicts(both.procedures["second"], both, PETROL_AND_SPARK, "")) == []


def test_a_fault_of_the_second_procedure_is_not_told_of_the_first_as_well() -> None:
    """One finding, in the file that must be mended."""
    both = library(
        first="steps: {look: {then: procedure second}}",
        second="steps: {bowl: {opens: petrol, then: step spark}, spark: {makes: spark}}",
    )
    assert list(check_conflicts(both.procedures["first"], both, PETROL_AND_SPARK, "")) == []
    assert len(list(check_conflicts(both.procedures["second"], both, PETROL_AND_SPARK, ""))) == 1


def test_what_is_carried_through_a_middle_procedure_is_told_of_the_first() -> None:
    """A hands to B, B to C, and only A opened petrol."""
    three = library(
        first="steps: {bowl: {opens: petrol, then: procedure middle}}",
        middle="steps: {look: {then: procedure last}}",
        last="steps: {spark: {makes: spark}}",
    )
    told = {
        name: [flaw.at for flaw in check_conflicts(each, three, PETROL_AND_SPARK, "")]
        for name, each in three.procedures.items()
    }
    assert told == {"first": [("steps", "bowl", "then")], "middle": [], "last": []}


LOOPS = {
    "loop": "steps: {a: {opens: petrol, then: step b}, b: {makes: spark, then: step a}}",
    "nowhere": "steps: {a: {opens: petrol, then: step b}, b: {makes: spark, then: step c}}",
}


@pytest.mark.parametrize("text", LOOPS.values(), ids=LOOPS)
def test_a_conflict_in_a_broken_graph_is_still_found(text) -> None:
    """All findings come out in one run, whatever else is wrong."""
    assert [flaw.at for flaw in check_conflicts(procedure(text), None, PETROL_AND_SPARK, "")] == [
        ("steps", "b", "makes")
    ]


@st.composite
def conflicts(draw: st.DrawFn) -> Conflict:
    """Return a conflict of arbitrary conditions, of so many that random steps often meet it."""
    some = st.frozensets(st.sampled_from(sorted(CONDITIONS)), min_size=4, max_size=16)
    clauses = tuple(draw(st.lists(some, min_size=1, max_size=2)))
    return Conflict(
        draw(some), clauses, draw(st.sampled_from([frozenset(), frozenset({"petrol-open"})]))
    )


@given(libraries(), conflicts())
@settings(max_examples=100, deadline=None, print_blob=True)
def test_conflicts_found_are_those_on_some_path(both, conflict) -> None:
    """Found nodes = those in conflict when every path is walked alone; the way is the shortest."""
    scope = scope_from(both.procedures["first"], both)
    shortest: dict[str, int] = {}
    for path in all_paths(scope, scope.starts[0]):
        for position, (node, state) in enumerate(states_along(scope, path), start=1):
            effects = scope.effects[node]
            if conflict.is_met(state_during(state, effects), effects):
                shortest[node] = min(position, shortest.get(node, position))
    clashes = find_clashes(follow(scope), (conflict,))
    assert {node: len(clash.way) for node, clash in clashes.items()} == shortest
    for clash in clashes.values():
        assert all(scope.graph.has_edge(*edge) for edge in pairwise(clash.way))
