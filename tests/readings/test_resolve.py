"""What one reading should show on one machine with one meter."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.model.machine import Machine, SheetValue
from pullcord.model.meter import MeterSheet
from pullcord.model.procedure import Reading
from pullcord.readings.meter import parse_meter
from pullcord.readings.resolve import ORIGIN_WORDS, Resolved, for_machine
from pullcord.readings.unit import UNITS, Unit

METER = parse_meter(MeterSheet())
THREE = ("below", "within", "above")
COIL = Reading(
    quantity="resistance", at="ignition-unit.source-coil", against="ground",
    limits="source-coil", general="100-500 ohm", source="common practice",
)  # fmt: skip


def machine(**values: SheetValue) -> Machine:
    """Return a machine with these values, underscores standing for hyphens."""
    named = {name.replace("_", "-"): value for name, value in values.items()}
    return Machine(machine="old-bike", title="Old bike", kind="farm-bike", values=named)


GOOD = SheetValue(
    limits="250 ohm ± 10 %", source="measured from a good one", winding="copper", at_celsius=20
)


@pytest.mark.parametrize(
    ("sheet", "origin", "words", "source"),
    [
        (machine(source_coil=GOOD), "sheet", "225 to 275 ohm", "measured from a good one"),
        (machine(source_coil=SheetValue()), "general", "100 to 500 ohm", "common practice"),
        (machine(), "general", "100 to 500 ohm", "common practice"),
        (None, "general", "100 to 500 ohm", "common practice"),
        (
            machine(source_coil=SheetValue(limits="12 V", source="x")),
            "general", "100 to 500 ohm", "common practice",
        ),
    ],
    ids=["on-the-sheet", "left-empty", "not-on-the-sheet", "general-page", "wrong-unit"],
)  # fmt: skip
def test_the_sheet_wins_over_the_general_limits(
    sheet: Machine | None, origin: str, words: str, source: str
) -> None:
    """A machine's own figure stands first, and a general one is marked as general."""
    found = for_machine(COIL, THREE, sheet, METER)
    assert found.limits is not None
    assert (found.origin, found.limits.words, found.source) == (origin, words, source)
    assert ("not this machine's own" in found.origin_words) == (origin == "general")


def test_a_winding_brings_its_temperatures() -> None:
    """Only what the sheet calls a copper winding gets the table."""
    found = for_machine(COIL, THREE, machine(source_coil=GOOD), METER)
    assert [row.celsius for row in found.temperatures] == [-10, 0, 10, 20, 30, 40]
    assert for_machine(COIL, THREE, None, METER).temperatures == ()


def test_an_empty_winding_lends_its_copper_to_the_general_limits() -> None:
    """That it is a coil is known even where its resistance is not."""
    sheet = machine(source_coil=SheetValue(winding="copper"))
    assert len(for_machine(COIL, THREE, sheet, METER).temperatures) == 6


def test_nothing_known_says_so() -> None:
    """Without sheet and general limits the page leaves room to write."""
    bare = COIL.model_copy(update={"general": None})
    found = for_machine(bare, THREE, None, METER)
    assert (found.origin, found.limits, found.bands, found.shares) == ("unknown", None, (), ())
    assert found.origin_words == "not known: write it here when you find it"


def test_answers_may_be_limits_themselves() -> None:
    """Then neither sheet nor general limits are needed, and the bands still stand."""
    bare = Reading(quantity="resistance", at="the two coil pins")
    found = for_machine(bare, ("under 1 ohm", "1-3 ohm", "over 3 ohm"), None, METER)
    assert found.origin == "answers"
    assert [band.words for band in found.bands if not band.is_close] == [
        "0.6 ohm or less", "1.4 to 2.6 ohm", "3.4 ohm or more",
    ]  # fmt: skip
    assert found.dial == "200 ohm"


def test_gaps_leave_the_bands_out() -> None:
    """Bands are never shown for answers that do not hold every reading."""
    assert for_machine(COIL, ("within", "above"), None, METER).bands == ()


@pytest.mark.parametrize(
    ("general", "dial"),
    [
        ("under 1 ohm", "200 ohm"), ("20-40 ohm", "200 ohm"), ("100-199 ohm", "2 kohm"),
        ("200-300 ohm", "2 kohm"), ("4-6 kohm", "20 kohm"), ("over 5 Mohm", "2 Mohm"),
        ("open", "2 Mohm"),
    ],
)  # fmt: skip
def test_the_dial_has_room_above_the_limits(general: str, dial: str) -> None:
    """The range to set still shows the upper limit with its doubt."""
    reading = Reading(quantity="resistance", at="the coil", general=general)
    assert for_machine(reading, THREE, None, METER).dial == dial


def notes(general: str, quantity: str = "resistance") -> Resolved:
    """Return a resolved reading of general limits."""
    reading = Reading.model_validate({"quantity": quantity, "at": "x", "general": general})
    return for_machine(reading, THREE, None, METER)


def test_low_ohms_remind_of_the_leads_and_the_bite() -> None:
    """Under 200 ohm the leads and a corroded pin can change the verdict."""
    found = notes("20-40 ohm").notes
    assert "Hold the two probes together first" in found[0]
    assert "about 0.3 ohm is usual" in found[0]
    assert any("until the probe bites" in note for note in found)


def test_below_one_ohm_the_meter_says_what_it_cannot_tell() -> None:
    """The sentence names the two values that look the same."""
    (note,) = (note for note in notes("under 1 ohm").notes if "cannot tell" in note)
    assert "may be off by 0.33 ohm either way, so it cannot tell 0.6 ohm from 1 ohm" in note
    assert "a few shorted turns it does not find" in note
    assert not any("cannot tell" in note for note in notes("20-40 ohm").notes)


@settings(max_examples=100, deadline=None, print_blob=True)
@given(
    st.sampled_from(["{0}-{1} {2}", "under {0} {2}", "over {1} {2}", "{0} {2} ± 10 %", "{1} {2}"]),
    st.sampled_from(["0", "0.3", "12.5", "999999999", "0.000001"]),
    st.sampled_from(["0", "0.3", "12.5", "999999999", "0.000001"]),
    st.sampled_from(list(UNITS.values())),
    st.sampled_from(
        [THREE, (*THREE, "open"), ("within", "above"), ("under 1 ohm", "1 ohm or more")]
    ),
)
def test_nothing_an_author_writes_breaks_a_page(
    form: str, one: str, other: str, unit: Unit, answers: tuple[str, ...]
) -> None:
    """Any readable limits, on the sheet or general, make something that can be shown."""
    text = form.format(one, other, unit.name)
    reading = Reading(quantity=unit.quantity, at="x", limits="source-coil", general=text)
    sheet = machine(source_coil=SheetValue(value=text, winding="copper", at_celsius=90))
    for each in (None, sheet):
        found = for_machine(reading, answers, each, METER)
        assert found.origin in ORIGIN_WORDS
        assert all(band.words for band in found.bands)
        assert not any(" -" in note for note in found.notes)


def test_what_no_meter_measures_is_taken_at_face_value() -> None:
    """A feeler gauge has no dial, no leads and no over-range."""
    found = notes("0.6-0.8 mm", "length")
    assert (found.is_at_face_value, found.dial, found.notes) == (True, "", ())
    assert [band.words for band in found.bands] == ["under 0.6 mm", "0.6 to 0.8 mm", "over 0.8 mm"]
