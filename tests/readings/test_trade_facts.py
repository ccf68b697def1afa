"""What the trade reads on good parts must come out as good.

Every figure here is COMMON PRACTICE: what people with a cheap meter read at an unplugged
capacitor-discharge unit that works. There is no published source for any of them.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from pullcord.model.meter import MeterSheet
from pullcord.model.procedure import Reading
from pullcord.readings.bands import judge
from pullcord.readings.meter import parse_meter
from pullcord.readings.resolve import Resolved, for_machine

METER = parse_meter(MeterSheet())
OPEN = "Infinity"


def resolved(general: str, answers: tuple[str, ...]) -> Resolved:
    """Return general limits resolved on the cheap meter."""
    reading = Reading(
        quantity="resistance", at="ignition-unit.pin", against="ground", general=general,
        source="common practice",
    )  # fmt: skip
    return for_machine(reading, answers, None, METER)


BELOW_TOO = ("below", "within", "above")
NO_BELOW = ("within", "above")
WITH_OPEN = ("within", "above", "open")


@pytest.mark.parametrize(
    ("general", "answers", "reads"),
    [
        ("under 5 ohm", NO_BELOW, "2"),
        ("under 5 ohm", NO_BELOW, "3"),
        ("under 10 ohm", WITH_OPEN, "0"),
        ("under 10 ohm", WITH_OPEN, "6"),
        ("open", ("below", "within"), OPEN),
        ("200-300 ohm", BELOW_TOO, "250"),
        ("under 1 ohm", NO_BELOW, "0.5"),
        ("20-40 ohm", BELOW_TOO, "33"),
    ],
    ids=[
        "ground-pin-to-engine", "ground-pin-to-painted-frame", "stop-wire-off-least",
        "stop-wire-off-most", "stop-wire-on", "source-coil", "coil-primary", "trigger-coil",
    ],
)  # fmt: skip
def test_good_parts_pass(general: str, answers: tuple[str, ...], reads: str) -> None:
    """Common practice: these readings are of good parts, and are judged within."""
    assert judge(resolved(general, answers).bands, Decimal(reads)).answers == ("within",)


def test_the_primary_says_what_the_meter_can_and_cannot_tell() -> None:
    """Common practice: a primary is under 1 ohm. 0.6 passes, 1.4 fails, between is too close."""
    found = resolved("under 1 ohm", NO_BELOW)
    verdicts = {
        shown: judge(found.bands, Decimal(shown)).answers for shown in ("0.6", "0.7", "1.3", "1.4")
    }
    assert verdicts == {
        "0.6": ("within",),
        "0.7": ("within", "above"),
        "1.3": ("within", "above"),
        "1.4": ("above",),
    }
    assert any("cannot tell 0.6 ohm from 1 ohm" in note for note in found.notes)


def test_a_corroded_pin_is_read_again_before_it_is_believed() -> None:
    """Common practice: 12 ohm at first, 2 ohm once the probe bites, is a good ground."""
    found = resolved("under 5 ohm", NO_BELOW)
    assert judge(found.bands, Decimal(12)).answers == ("above",)
    assert judge(found.bands, Decimal(2)).answers == ("within",)
    assert any("go by the lowest steady reading" in note for note in found.notes)
