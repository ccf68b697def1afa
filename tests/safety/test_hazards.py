"""What the conditions call up: nothing dangerous is silent, nothing is named that is not there."""

from __future__ import annotations

from itertools import pairwise

import pytest

from pullcord.safety.hazards import CALLS, HAZARDS, hazards_of, without_covered
from pullcord.safety.vocabulary import CONDITIONS, ROWS

HARMLESS = {
    "heat-unknown": "hurts only where petrol is opened, which is refused",
    "ignition-live": "every machine that runs has it",
    "battery-connected": "every machine with a battery has it",
    "no-fresh-air": "hurts only while the engine runs, which has its own box",
    "no-way-to-stop": "the same",
    "unsupported": "hurts only under the machine, which has its own box",
    "ignition-off": "makes safe",
    "test-lead": "its box stands where it is fitted",
    "borrowed-part": "its box stands where it is fitted",
    "plug-hole-open": "hurts only while the engine is cranked",
    "guard-off": "hurts only while something moves",
}


def test_calls_name_known_conditions_and_hazards() -> None:
    """A misspelt name would leave a step without its box; a hazard nobody calls is dead."""
    assert {name for call in CALLS for name in call.all_of} <= set(CONDITIONS)
    assert {name for call in CALLS for name in call.hazards} == set(HAZARDS)


def test_every_condition_calls_a_hazard_or_is_known_to_be_harmless() -> None:
    """A new condition must be given a hazard, or a reason here why it needs none."""
    alone = {name for name in CONDITIONS if hazards_of(frozenset({name}))}
    assert alone.isdisjoint(HARMLESS)
    assert alone | set(HARMLESS) == set(CONDITIONS)


@pytest.mark.parametrize(
    "row", [row for row in ROWS if row.verb == "makes"], ids=lambda row: row.thing
)
def test_everything_that_can_be_made_has_a_box(row) -> None:
    """Spark, flame, hot work, running, cranking, moving drive: none is ever without a caution."""
    assert hazards_of(frozenset({*row.begins, *row.meets}))


def test_hazards_stand_in_order_of_their_signal_words() -> None:
    """The first hazard of a box is the gravest: the order of the table is the order of printing."""
    words = [hazard.signal for hazard in HAZARDS.values()]
    assert all(graver >= lesser for graver, lesser in pairwise(words))


def test_what_covers_another_hazard_is_no_milder_and_of_its_kind() -> None:
    """Leaving a covered hazard out never softens a box."""
    for hazard in HAZARDS.values():
        for name in hazard.covers:
            assert HAZARDS[name].signal <= hazard.signal
            assert HAZARDS[name].family == hazard.family


CASES = {
    "open petrol speaks for its vapour": (
        {"petrol-open", "vapour", "near-petrol"},
        ["open-petrol"],
    ),
    "vapour left behind": ({"vapour"}, ["petrol-vapour"]),
    "cranking with the ignition live": (
        {"cranking", "ignition-live"},
        ["high-voltage", "moving-parts", "cranking"],
    ),
    "cranking with it disabled": ({"cranking"}, ["moving-parts", "cranking"]),
    "cranking by an open hole": (
        {"cranking", "plug-hole-open"},
        ["plug-hole-spray", "moving-parts", "cranking"],
    ),
    "a spark made on purpose": ({"spark"}, ["petrol-near", "high-voltage"]),
    "running": (
        {"running", "engine-running", "hot-parts"},
        ["carbon-monoxide", "high-voltage", "moving-parts", "hot-parts"],
    ),
    "guard off while it runs": (
        {"guard-off", "running"},
        ["carbon-monoxide", "guard-off", "high-voltage", "hot-parts"],
    ),
    "guard off, all at rest": ({"guard-off"}, []),
    "under a raised machine": ({"works-under", "machine-raised"}, ["under-machine"]),
    "tyre": ({"tyre-pressure", "near-pressure"}, ["tyre-pressure"]),
    "on the charger": ({"charging", "battery-spark", "near-battery"}, ["charging"]),
}


@pytest.mark.parametrize(("conditions", "hazards"), CASES.values(), ids=CASES)
def test_conditions_call_up_hazards(conditions, hazards) -> None:
    """Known answers, gravest first, without those another one covers."""
    found = without_covered(hazards_of(frozenset(conditions)))
    assert [hazard.id for hazard in found] == hazards
