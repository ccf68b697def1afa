"""Readings the trade calls good come out as good, and clearly so on a cheap meter.

Every figure here is common practice: there is no published source.
"""

from __future__ import annotations

import pytest

from tests.library.table import answer_at, read_library

NO_SPARK = read_library().procedures["no-spark"]

GOOD = [
    ("ground-engine", "2.0 ohm"),
    ("ground-frame", "3.0 ohm"),
    ("stop-wire-stop", "0 ohm"),
    ("stop-wire-stop", "6.0 ohm"),
    ("source-coil", "250 ohm"),
    ("source-coil", "210 ohm"),
    ("source-coil", "290 ohm"),
    ("trigger-coil", "33 ohm"),
    ("trigger-coil", "21 ohm"),
    ("trigger-coil", "39 ohm"),
    ("coil-primary", "0.5 ohm"),
    ("points-coil-primary", "0.8 ohm"),
    ("cap-reading", "5.0 kohm"),
    ("plug-gap", "0.6 mm"),
    ("plug-gap", "0.8 mm"),
]


@pytest.mark.parametrize(("step", "shown"), GOOD, ids=[f"{step}-{shown}" for step, shown in GOOD])
def test_good_part_passes(step: str, shown: str) -> None:
    """A good part's reading is within limits, and not too close to call."""
    assert answer_at(NO_SPARK.steps[step], shown) == "within"


def test_stop_wire_is_open_at_run() -> None:
    """At run a good stop wire reaches no ground: the meter shows over-range."""
    assert answer_at(NO_SPARK.steps["stop-wire-run"], "OL") == "open"


def test_plain_cap_is_no_fault() -> None:
    """A cap without a resistor reads near zero, and the walk goes on as with a good one."""
    step = NO_SPARK.steps["cap-reading"]
    assert step.answers[answer_at(step, "0.2 ohm")] == step.answers["within"]


def test_corroded_pin_is_not_taken_for_a_broken_winding() -> None:
    """A source coil that reads high at a corroded pin is measured again where the probe bites."""
    at_unit = NO_SPARK.steps["source-coil"]
    assert str(at_unit.answers[answer_at(at_unit, "420 ohm")].node) == "step:source-engine"
    at_engine = NO_SPARK.steps["source-engine"]
    assert at_engine.answers[answer_at(at_engine, "252 ohm")].node == "cause:wire-to-unit-bad"


@pytest.mark.parametrize("coil", ["source", "trigger"])
def test_shorted_wire_is_not_taken_for_a_shorted_winding(coil: str) -> None:
    """A winding that reads low at the unit is measured at the engine before it is replaced."""
    at_unit = NO_SPARK.steps[f"{coil}-coil"]
    assert at_unit.answers[answer_at(at_unit, "1.2 ohm")].node == f"step:{coil}-engine"
    at_engine = NO_SPARK.steps[f"{coil}-engine"]
    assert at_engine.answers[answer_at(at_engine, "1.2 ohm")].node == f"cause:{coil}-coil-bad"
