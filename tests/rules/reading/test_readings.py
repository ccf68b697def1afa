"""Readings with slips in them, with and without machine sheets."""

from __future__ import annotations

import pytest

from tests.rules.files import check_files

HEAD = """\
procedure: measure-coil
title: Measure the coil
symptom: There is no spark.
about: A made-up example.
start: coil
causes:
  coil: {title: The coil is broken, remedy: Fit another.}
steps:
  coil:
    title: Measure the coil
    do: Unplug the coil and measure across it.
"""


def sheet(limits: str, name: str = "old-bike") -> str:
    """Return a machine sheet with one value."""
    return (
        f"machine: {name}\ntitle: {name}\nkind: farm-bike\n"
        f"values:\n  source-coil: {{limits: {limits}, source: x}}\n"
    )


PLUG = """\
connectors:
  unit:
    title: Unit
    rows: 1
    columns: 2
    pins:
      ground: {at: a1, function: Ground}
"""


def reading(general: str, answers: str, quantity: str = "resistance") -> str:
    """Return the end of a procedure whose one step measures."""
    fallback = f", general: {general}, source: x" if general else ""
    return (
        f"    reading: {{quantity: {quantity}, at: pins, limits: source-coil{fallback}}}\n"
        f"    answers: {{{answers}}}\n"
    )


ALL = "below: cause coil, within: done, above: cause coil"
TWO = "within: done, above: cause coil"

CASES = {
    "complete": (reading("200-300 ohm", ALL), [], []),
    "open-apart": (reading("200-300 ohm", f"{ALL}, open: cause coil"), [], []),
    "gap-in-general": (
        reading("200-300 ohm", TWO), [],
        ["13:5 answers-gap no answer for a reading of under 200 ohm"],
    ),
    "gap-only-on-a-machine": (
        reading("under 10 ohm", TWO), [sheet("2-6 ohm")],
        ["13:5 answers-gap no answer for a reading of under 2 ohm on `old-bike`, whose sheet "
         "says 2 to 6 ohm"],
    ),
    "below-for-a-sheet-with-a-lower-end": (
        reading("under 10 ohm", ALL), [sheet("2-6 ohm"), sheet("up to 6 ohm", "old-pump")], []
    ),
    "machine-fits-the-answers": (reading("under 10 ohm", TWO), [sheet("0-6 ohm")], []),
    "overlap-only-on-a-machine": (
        reading("over 1 Mohm", "below: cause coil, within: done, open: done"), [sheet("open")],
        ["13:48 answers-overlap answers `within` and `open` both stand for a reading of open "
         "(over-range) on `old-bike`, whose sheet says open (over-range)"],
    ),
    "wrong-unit-on-a-machine": (
        reading("200-300 ohm", ALL), [sheet("12-14 V")],
        ["12:55 other-quantity the step measures a resistance, but `source-coil` on the sheet of "
         "`old-bike` is a voltage"],
    ),
    "nobody-knows": (
        reading("", ALL), [],
        ["12:55 no-limits no machine sheet gives `source-coil`, and there are no general limits"],
    ),
    "one-machine-knows": (
        reading("", ALL), [sheet("200-300 ohm"), "machine: pump\ntitle: Pump\nkind: pump\n"],
        ["12:55 not-on-sheet the sheet of `pump` has no `source-coil`, and there are no general "
         "limits"],
    ),
    "meter-too-coarse-on-a-machine": (
        reading("200-300 ohm", ALL), [sheet("0.6 ohm ± 0.1 ohm")],
        ["13:34 meter-cannot-tell a cheap 3½-digit meter can never prove `within` (0.5 to 0.7 "
         "ohm) on `old-bike`, whose sheet says 0.5 to 0.7 ohm: near 0.7 ohm it may be off by "
         "0.33 ohm"],
    ),
    "six-tenths-or-one-ohm": (
        reading("", "under 0.6 ohm: cause coil, 0.6-1 ohm: done, over 1 ohm: cause coil"), [],
        ["13:42 meter-cannot-tell a cheap 3½-digit meter can never prove `0.6-1 ohm` (0.6 to 1 "
         "ohm): near 1 ohm it may be off by 0.33 ohm"],
    ),
    "a-pin-that-no-plug-has": (
        reading("200-300 ohm", ALL).replace("at: pins", "at: unit.coil, against: unit.ground"),
        [sheet("200-300 ohm") + PLUG, sheet("200-300 ohm", "old-pump")],
        ["12:41 unknown-probe no pin `coil` on the `unit` of `old-bike`"],
    ),
    "a-plug-that-nobody-has": (
        reading("200-300 ohm", ALL).replace("at: pins", "at: other.coil, against: engine. Bare"),
        [sheet("200-300 ohm") + PLUG], [],
    ),
    "a-count": (reading("78-80", ALL, quantity="count"), [], []),
}  # fmt: skip


@pytest.mark.parametrize(("text", "sheets", "expected"), CASES.values(), ids=CASES)
def test_slips_are_found_where_they_are(text: str, sheets: list[str], expected: list[str]) -> None:
    """A reading is held against its own limits and against every sheet the procedure fits."""
    files = {"measure-coil.yaml": (HEAD + text).encode()}
    for each in sheets:
        name = each.split("\n", 1)[0].removeprefix("machine: ")
        files[f"{name}.yaml"] = each.encode()
    found = check_files(files)
    assert [f"{one.line}:{one.column} {one.rule} {one.message}" for one in found] == expected
