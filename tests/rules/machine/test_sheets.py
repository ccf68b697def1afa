"""Machine sheets with slips in them: each is found at its line and column, all in one run."""

from __future__ import annotations

import pytest

from tests.rules.files import check_files

HEAD = """\
machine: old-bike
title: Old bike
kind: farm-bike
"""

CASES = {
    "every-figure-slip": (
        """\
values:
  source-coil: {limits: 300-200 ohm, source: x}
  trigger-coil: {limits: 20-40 V, winding: copper, source: x}
  bore: {value: 68 ohm, source: x}
  plug-gap: {limits: 0.6 mm, value: 0.7 mm, source: x}
  tyre: {value: 145/70-6, source: x}
  chain-links: {value: 78, quantity: count}
""",
        [
            "5:25 unreadable-figure",
            "6:26 figure-of-other-quantity",
            "7:17 figure-of-other-quantity",
            "8:37 two-figures",
            "10:3 sheet-without-source",
        ],
    ),
    "every-pin-slip": (
        """\
connectors:
  unit:
    title: Ignition unit
    rows: 2
    columns: 2
    blanks: [b2, c1]
    pins:
      ground: {at: a1, wire: GN/YE, function: Ground}
      source: {at: "1,1", wire: BKWH, function: Source coil}
      trigger: {at: a3, wire: WHBK, function: Trigger}
      stop: {at: b2, wire: BL, function: Stop wire}
      coil: {at: there, function: Coil}
""",
        [
            "9:18 outside-connector",
            "11:30 unknown-wire",
            "12:20 place-taken",
            "13:21 outside-connector",
            "13:31 unknown-wire",
            "14:18 blank-with-pin",
            "14:28 unknown-wire",
            "15:18 outside-connector",
        ],
    ),
    "every-expectation-slip": (
        """\
values:
  source-coil: {limits: 200-300 ohm, source: x}
connectors:
  unit:
    title: Ignition unit
    rows: 1
    columns: 3
    pins:
      ground: {at: a1, function: Ground}
      source:
        at: a2
        function: Source coil
        expect:
          - {against: unit.groud, value: source-coil}
          - {against: ground, value: sauce-coil}
          - {against: ground, limits: 5 mohm, source: x}
          - {against: ground, limits: open}
          - {against: ground, limits: open, value: source-coil, source: x}
""",
        [
            "17:23 unknown-pin",
            "18:38 unknown-value",
            "19:39 unreadable-figure",
            "20:13 sheet-without-source",
            "21:52 two-figures",
        ],
    ),
    "nothing-known-yet": ("values:\n  source-coil: {winding: copper}\n", []),
    "wrong-shape": ("connectors: none\n", ["4:13 wrong-shape"]),
    "too-many-rows": (
        """\
connectors:
  unit: {title: Unit, rows: 99, columns: two, pins: {}}
""",
        ["5:29 wrong-number", "5:42 wrong-number"],
    ),
}


@pytest.mark.parametrize(("text", "expected"), CASES.values(), ids=CASES)
def test_slips_are_found_where_they_are(text: str, expected: list[str]) -> None:
    """Every slip of a sheet comes out in one run, at the value that is wrong."""
    found = check_files({"old-bike.yaml": (HEAD + text).encode()})
    assert [f"{each.line}:{each.column} {each.rule}" for each in found] == expected
