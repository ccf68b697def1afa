"""Looking things up in a machine sheet."""

from __future__ import annotations

import pytest

from pullcord.model.machine import Connector, Expectation, Machine, Pin, SheetValue
from pullcord.readings.sheet import (
    expected_limits,
    expected_source,
    find_pin,
    is_pin,
    place_words,
    value_limits,
)

PIN = Pin(at="a1", function="Source coil")
MACHINE = Machine(
    machine="old-bike",
    title="Old bike",
    kind="farm-bike",
    values={
        "source-coil": SheetValue(limits="200-300 ohm", source="measured from a good one"),
        "tyre-size": SheetValue(value="145/70-6"),
        "trigger-coil": SheetValue(),
    },
    connectors={
        "ignition-unit": Connector(title="Unit plug", rows=1, columns=1, pins={"source": PIN})
    },
)


def test_a_pin_is_found_by_connector_and_name() -> None:
    """`ignition-unit.source` is the pin; anything else is a place in words."""
    found = find_pin(MACHINE, "ignition-unit.source")
    assert found is not None
    assert found.pin == PIN
    for words in ("the plug cap", "ignition-unit", "ignition-unit.coil", "other.source"):
        assert find_pin(MACHINE, words) is None


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("ignition-unit.source-coil", "source coil pin of the ignition unit plug"),
        ("panel-plug.stop", "stop pin of the panel plug"),
        ("bare engine metal", "bare engine metal"),
        ("stop wire, switch side", "stop wire, switch side"),
        ("the coil. Its core", "the coil. Its core"),
        ("2.5 mm from the rim", "2.5 mm from the rim"),
    ],
)
def test_a_pin_has_words_for_those_without_the_sheet(place: str, words: str) -> None:
    """A general page never prints a name with a full stop in it; words stay as written."""
    assert place_words(place) == words
    assert is_pin(place) == (words != place)


def test_what_has_no_figure_is_not_known() -> None:
    """A missing value, an empty one and a plain word have no limits."""
    assert value_limits(MACHINE.values["trigger-coil"]) is None
    assert value_limits(MACHINE.values["tyre-size"]) is None
    assert value_limits(None) is None


@pytest.mark.parametrize(
    ("expectation", "words", "source"),
    [
        (Expectation(against="ground", limits="open"), "open (over-range)", ""),
        (
            Expectation(against="ground", value="source-coil"),
            "200 to 300 ohm", "measured from a good one",
        ),
        (
            Expectation(against="x", limits="1-2 ohm", value="source-coil", source="a leaflet"),
            "1 to 2 ohm", "a leaflet",
        ),
        (Expectation(against="ground", value="trigger-coil"), None, ""),
        (Expectation(against="ground", limits="2-1 ohm"), None, ""),
        (Expectation(against="ground"), None, ""),
    ],
)  # fmt: skip
def test_what_a_pin_should_read(expectation: Expectation, words: str | None, source: str) -> None:
    """A pin's own limits come first, then the value it names; else nobody knows."""
    limits = expected_limits(expectation, MACHINE)
    assert (limits.words if limits else None) == words
    assert expected_source(expectation, MACHINE) == source
