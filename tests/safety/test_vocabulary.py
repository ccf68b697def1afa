"""The vocabulary covers everything an author may write, and nothing else."""

from __future__ import annotations

from collections import Counter
from typing import get_args

import pytest

from pullcord.model.action import Action
from pullcord.model.base import kebab
from pullcord.safety.vocabulary import AT_START, CONDITIONS, ROWS, says


def written() -> list[tuple[str, str]]:
    """Return every verb with every thing the model lets an author write."""
    return [
        (kebab(name), thing)
        for name, field in Action.model_fields.items()
        for thing in get_args(get_args(field.annotation)[0])
    ]


def test_every_verb_and_thing_has_exactly_one_row() -> None:
    """A pair the model allows and the vocabulary forgets would be taken to be harmless."""
    assert len(written()) > 40
    assert Counter((row.verb, row.thing) for row in ROWS) == Counter(written())


def test_rows_name_known_conditions_only() -> None:
    """A row with a misspelt condition would begin something nobody looks for."""
    used = {name for row in ROWS for name in (*row.begins, *row.ends, *row.meets)}
    assert used == set(CONDITIONS)


def test_what_begins_lasts() -> None:
    """A condition that is over with its step is met, never begun or ended."""
    lasting = {name for row in ROWS for name in (*row.begins, *row.ends)}
    assert {name for name, condition in CONDITIONS.items() if condition.lasts} == lasting


@pytest.mark.parametrize("condition", [each for each in CONDITIONS.values() if each.loose_end])
def test_a_loose_end_can_be_put_right(condition) -> None:
    """The key a finding recommends ends the condition it is recommended for."""
    verb, _, thing = condition.put_right_by.partition(": ")
    rows = [row for row in ROWS if (row.verb, row.thing) == (verb, thing)]
    assert [condition.id in row.ends for row in rows] == [True]
    assert condition.reminds


def test_the_start_is_the_careful_one() -> None:
    """Unknown history: perhaps hot, live and with a battery; no air, no stop, no supports."""
    careful = {
        "heat-unknown",
        "ignition-live",
        "battery-connected",
        "no-fresh-air",
        "no-way-to-stop",
        "unsupported",
    }
    assert careful == AT_START


def test_several_conditions_are_said_in_one_order() -> None:
    """The words do not depend on the order of a set."""
    assert says(frozenset({"vapour", "petrol-open"})) == (
        "petrol is open and petrol vapour is in the room"
    )
