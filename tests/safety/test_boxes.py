"""The caution boxes follow from what may hold, on whatever way someone came."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.safety.box import Box, SignalWord
from pullcord.safety.boxes import boxes_for, boxes_of
from pullcord.safety.effects import rows_of
from pullcord.safety.hazards import hazards_of
from pullcord.safety.notes import safety_notes
from pullcord.safety.vocabulary import CONDITIONS
from tests.safety.make import library, procedure
from tests.safety.random_procedures import libraries

DANGER, WARNING, CAUTION = SignalWord.DANGER, SignalWord.WARNING, SignalWord.CAUTION
PETROL = Box(DANGER, ("open-petrol",))
VAPOUR = Box(WARNING, ("petrol-vapour",))


def test_a_box_stays_until_its_cause_is_put_right() -> None:
    """Petrol opened in one step is still in the box of the next, which says nothing of petrol."""
    boxes = boxes_for(
        procedure("""
        steps:
          look: {then: step bowl}
          bowl: {opens: petrol, then: step read}
          read: {then: step refit}
          refit: {closes: petrol, then: step air}
          air: {clears: vapour, then: step after}
          after: {}
        """)
    )
    assert boxes == {
        "step:look": (),
        "step:bowl": (PETROL,),
        "step:read": (PETROL,),
        "step:refit": (PETROL,),
        "step:air": (VAPOUR,),
        "step:after": (),
    }


def test_one_way_on_which_it_may_hold_is_enough() -> None:
    """Whoever came by the other way reads one box too many; nobody reads one too few."""
    boxes = boxes_for(
        procedure("""
        steps:
          ask: {answers: {a: step bowl, b: step meet}}
          bowl: {opens: petrol, then: step meet}
          meet: {}
        """)
    )
    assert boxes["step:meet"] == (PETROL,)


def test_a_remedy_has_its_boxes() -> None:
    """What the repair itself touches stands before it."""
    boxes = boxes_for(
        procedure("""
        causes: {coil: {near: high-voltage}}
        steps: {a: {then: cause coil}}
        """)
    )
    assert boxes["cause:coil"] == (Box(WARNING, ("high-voltage",)),)


def test_a_step_nobody_reaches_has_its_boxes_all_the_same() -> None:
    """It is an error of its own; it must not lose its caution on top of that."""
    boxes = boxes_for(procedure("steps: {a: {}, lost: {opens: petrol}}"))
    assert boxes["step:lost"] == (PETROL,)


def test_what_another_procedure_hands_over_counts() -> None:
    """With the library, the callers' open petrol stands in the first box of the called one."""
    both = library(
        first="steps: {bowl: {opens: petrol, then: procedure second}}",
        second="steps: {look: {}}",
    )
    second = both.procedures["second"]
    assert boxes_for(second)["step:look"] == ()
    assert boxes_for(second, both)["step:look"] == (PETROL,)
    assert safety_notes(both)["second"].boxes == boxes_for(second, both)


MERGING = {
    "nothing": (set(), []),
    "one family in one box, under its gravest word": (
        {"flame", "vapour"},
        [Box(DANGER, ("flame-or-hot-work", "petrol-vapour"))],
    ),
    "all the rest in a second box": (
        {"running", "hot-parts", "fitting-test-lead"},
        [
            Box(DANGER, ("carbon-monoxide",)),
            Box(WARNING, ("high-voltage", "moving-parts", "hot-parts", "test-lead")),
        ],
    ),
    "two dangers": (
        {"petrol-open", "works-under"},
        [PETROL, Box(DANGER, ("under-machine",))],
    ),
    "a reminder only": ({"fitting-test-lead"}, [Box(CAUTION, ("test-lead",))]),
}


@pytest.mark.parametrize(("conditions", "boxes"), MERGING.values(), ids=MERGING)
def test_boxes_are_merged(conditions, boxes) -> None:
    """At most two, the gravest family first, merged when they are of one kind."""
    assert list(boxes_of(frozenset(conditions))) == boxes


@given(st.frozensets(st.sampled_from(sorted(CONDITIONS))))
@settings(max_examples=100, deadline=None, print_blob=True)
def test_no_box_loses_a_hazard(conditions) -> None:
    """Two boxes at most, gravest word first, every hazard in one of them or covered there."""
    boxes = boxes_of(conditions)
    hazards = hazards_of(conditions)
    shown = [name for box in boxes for name in box.hazards]
    covered = {name for hazard in hazards for name in hazard.covers}
    assert len(boxes) <= 2
    assert len(shown) == len(set(shown))
    assert set(shown) | covered >= {hazard.id for hazard in hazards}
    assert set(shown) <= {hazard.id for hazard in hazards}
    assert [box.signal for box in boxes] == sorted((box.signal for box in boxes), reverse=True)
    if hazards:
        assert boxes[0].signal == max(hazard.signal for hazard in hazards)


TOUCHES_FUEL_OR_SPARK = {
    ("opens", "petrol"),
    ("closes", "petrol"),
    ("clears", "vapour"),
    ("fits", "auxiliary-tank"),
    ("takes-off", "auxiliary-tank"),
    ("makes", "spark"),
    ("makes", "running"),
    ("starts", "engine"),
    ("near", "petrol"),
    ("near", "high-voltage"),
    ("disables", "ignition"),
    ("enables", "ignition"),
}


@given(libraries())
@settings(max_examples=100, deadline=None, print_blob=True)
def test_no_fuel_or_spark_without_a_box(both) -> None:
    """The promise of the house, on random libraries: such a step or remedy always has its box."""
    notes = safety_notes(both)
    for name, each in both.procedures.items():
        actions = {
            **{f"step:{key}": step for key, step in each.steps.items()},
            **{f"cause:{key}": cause for key, cause in each.causes.items()},
        }
        assert notes[name].boxes.keys() == actions.keys()
        for node, action in actions.items():
            touched = {(row.verb, row.thing) for row in rows_of(action)} & TOUCHES_FUEL_OR_SPARK
            words = [box.signal for box in notes[name].boxes[node]]
            assert not touched or max(words) >= WARNING
