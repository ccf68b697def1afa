"""What to see to before one starts and before one leaves, at whatever step one stops."""

from __future__ import annotations

from hypothesis import given, settings

from pullcord.safety.effects import state_leaving
from pullcord.safety.notes import safety_notes
from pullcord.safety.scope import node_in, scope_of
from pullcord.safety.vocabulary import CONDITIONS
from pullcord.safety.walkaway import before_you_start, before_you_walk_away
from tests.safety.make import library, procedure
from tests.safety.random_procedures import all_paths, libraries, states_along

EVENING = """
causes: {valve: {closes: petrol, clears: vapour, takes-off: test-lead}}
steps:
  look: {then: step lead}
  lead: {fits: test-lead, then: step bowl}
  bowl: {opens: petrol, then: cause valve}
"""


def test_every_step_says_what_is_left_when_one_stops_there() -> None:
    """Items grow as things are opened and fitted, and are gone when they are put right."""
    assert before_you_walk_away(procedure(EVENING)) == {
        "step:look": (),
        "step:lead": ("test-lead",),
        "step:bowl": ("petrol-open", "test-lead"),
        "cause:valve": (),
    }


def test_the_engine_is_stopped_first() -> None:
    """Items stand in the order in which they should be seen to."""
    items = before_you_walk_away(
        procedure("steps: {a: {raises: machine, fits: bypass, starts: engine, opens: petrol}}")
    )
    assert items["step:a"] == (
        "engine-running", "petrol-open", "bypass", "machine-raised", "hot-parts"
    )  # fmt: skip


def test_what_another_procedure_left_is_among_them() -> None:
    """A bypass fitted before the hand-over is still on."""
    both = library(
        first="steps: {a: {fits: bypass, then: procedure second}}", second="steps: {look: {}}"
    )
    assert before_you_walk_away(both.procedures["second"], both) == {"step:look": ("bypass",)}


@given(libraries())
@settings(max_examples=60, deadline=None, print_blob=True)
def test_items_are_those_left_on_some_path(both) -> None:
    """For every step, the reminders are the conditions some path leaves, and no others."""
    scope = scope_of(both)
    left: dict[str, set[str]] = {}
    for start in scope.starts:
        for path in all_paths(scope, start):
            for node, entering in states_along(scope, path):
                after = state_leaving(entering, scope.effects[node])
                left.setdefault(node, set()).update(after)
    notes = safety_notes(both)
    for name, each in both.procedures.items():
        for node, items in notes[name].walk_away.items():
            if node_in(each, node) in left:
                expected = [
                    key
                    for key, condition in CONDITIONS.items()
                    if condition.reminds and key in left[node_in(each, node)]
                ]
                assert list(items) == expected


def test_before_the_start_stands_the_union_of_all_that_is_met() -> None:
    """Hazards of every step and remedy, gravest first, and what they ask for, each once."""
    start = before_you_start(procedure(EVENING))
    assert start.hazards == ("open-petrol", "petrol-vapour", "test-lead")
    assert start.wear == ("eyes", "petrol-gloves")
    assert start.ready == ("extinguisher", "fresh-air", "no-flames", "petrol-can", "rags-outside")


def test_petrol_and_running_ask_for_an_extinguisher_and_fresh_air() -> None:
    """Class B and air stand before everything that opens petrol or runs an engine."""
    petrol = before_you_start(procedure("steps: {a: {opens: petrol}}"))
    running = before_you_start(procedure("steps: {a: {makes: running}}"))
    assert "extinguisher" in petrol.ready
    assert "fresh-air" in petrol.ready
    assert "fresh-air" in running.ready


def test_a_harmless_procedure_asks_for_nothing() -> None:
    """No noise where nothing threatens."""
    start = before_you_start(procedure("steps: {look: {}}"))
    assert (start.hazards, start.wear, start.ready) == ((), (), ())
