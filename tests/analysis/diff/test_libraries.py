"""What changed in meaning: one edit to a file, and all that is told of it."""

from __future__ import annotations

import re
from typing import Any

import pytest

from pullcord.analysis.diff import Change, Part, compare_libraries
from pullcord.analysis.diff.libraries import Side
from pullcord.project import load_project
from pullcord.source.places import shipped_procedures
from tests.analysis.diff.sides import MACHINE, PUMP, side


def told(change: Change) -> str:
    """Return a change on one line: part, place, what, old and new."""
    where = " ".join(part for part in (change.part.value, change.at, change.what) if part)
    detail = f" [{change.detail}]" if change.detail else ""
    return f"{where}{detail}: {change.old} -> {change.new}"


def changes(old: str, new: str) -> list[str]:
    """Return everything told about two states of one file."""
    return [
        told(each) for found in compare_libraries(side(old), side(new)) for each in found.changes
    ]


def test_nothing_differs_from_itself() -> None:
    """Nor when only comments, the order of keys or the line breaks do."""
    assert compare_libraries(side(PUMP, MACHINE), side(PUMP, MACHINE)) == ()
    reworked = PUMP.replace("title: Pump will not prime\n", "").replace(
        "about:", "# a comment\ntitle: >-\n  Pump will\n  not prime\nabout:"
    )
    assert reworked != PUMP
    assert changes(PUMP, reworked) == []


EDITS = {
    "an instruction": (
        "look for water.",
        "look for clean water.",
        [
            "steps casing do: Take out the filler plug and look for water. -> "
            "Take out the filler plug and look for clean water."
        ],
    ),
    "minutes": (
        "minutes: 10",
        "minutes: 30",
        [
            "steps float minutes: 10 -> 30",
            "time",
        ],
    ),
    "a price": ("2.50", "3", ["causes leak parts: 2.50 -> 3"]),
    "a price written otherwise": ("2.50", "2.5", []),
    "a price that is new": (
        "Fit a new float switch.",
        "Fit a new float switch., parts: 9",
        ["causes float parts:  -> 9"],
    ),
    "odds": (
        "odds: 4",
        "odds: 1",
        [
            "causes dry odds: 4 -> 1",
            "time",
        ],
    ),
    "where an answer leads": (
        "above: cause float",
        "above: cause leak",
        [
            "paths cause:leak fewest-checks: 3 -> 2",
            "paths cause:float unreached: 2 -> ",
            "steps float answer [above]: cause float -> cause leak",
            "time",
        ],
    ),
    "an answer's words": (
        "torn: cause leak}\n    tells: {torn: dry}",
        "torn or hard: cause leak}\n    tells: {torn or hard: dry}",
        [
            "steps washer reworded [cause leak]: torn -> torn or hard",
            "steps washer tells [torn or hard]:  -> dry",
            "steps washer tells [torn]: dry -> ",
        ],
    ),
    "an answer more": (
        "{whole: done,",
        "{whole: done, missing: procedure wont-idle,",
        [
            "paths procedure:wont-idle reached:  -> 3",
            "steps washer answer [missing]:  -> procedure wont-idle",
        ],
    ),
    "limits": (
        "under 10 ohm",
        "under 8 ohm",
        [
            "steps float general: under 10 ohm -> under 8 ohm",
            "steps float judged [within]: 9.6 ohm or less -> 7.6 ohm or less",
            "steps float judged [too close to call]: 9.7 to 10.3 ohm -> 7.7 to 8.3 ohm",
            "steps float judged [above]: 10.4 ohm or more -> 8.4 ohm or more",
        ],
    ),
    "limits written otherwise": ("under 10 ohm", "under 0.01 kohm", []),
    "a way on besides the answers": (
        "{within: step washer, above: cause float}",
        "{within: step washer, above: cause float}\n    then: done",
        ["paths done fewest-checks: 3 -> 2", "steps float then:  -> done", "time"],
    ),
    "a reading that becomes a look": (
        PUMP[PUMP.index("    reading:") : PUMP.index("    answers: {within")],
        "    ask: Does it close?\n",
        [
            "steps float ask:  -> Does it close?",
            "steps float reading: resistance at the switch's two pins -> ",
        ],
    ),
    "a hazard": (
        "near: moving-parts",
        "near: [moving-parts, hot-parts]",
        [
            "cautions step:float hazard [hot-parts]:  -> WARNING",
            "cautions wear [work-gloves]:  -> needed",
            "steps float near: moving-parts -> moving-parts, hot-parts",
        ],
    ),
    "a hazard less": (
        "    near: moving-parts\n",
        "",
        [
            "cautions step:float hazard [moving-parts]: WARNING -> ",
            "cautions wear [close-clothes]: needed -> ",
            "cautions wear [eyes]: needed -> ",
            "cautions ready [way-to-stop]: needed -> ",
            "steps float near: moving-parts -> ",
        ],
    ),
    "the start": (
        "start: casing",
        "start: float",
        [
            "paths step:float fewest-checks: 1 -> 0",
            "paths step:washer fewest-checks: 2 -> 1",
            "paths cause:leak fewest-checks: 3 -> 2",
            "paths cause:float fewest-checks: 2 -> 1",
            "paths done fewest-checks: 3 -> 2",
            "paths step:casing unreached: 0 -> ",
            "paths cause:dry unreached: 1 -> ",
            "whole start: casing -> float",
            "time",
        ],
    ),
    "a tool's name": (
        r"bucket(?=:|\n)",
        "pail",
        ["whole tool-renamed: bucket -> pail"],
    ),
    "a step's name": (
        r"(?<=step )washer|washer(?=:\n)",
        "hose-washer",
        ["steps hose-washer renamed: washer -> hose-washer"],
    ),
    "a cause's name": (
        r"(?<=cause )leak|leak(?=: \{)",
        "air-leak",
        ["causes air-leak renamed: leak -> air-leak"],
    ),
    "a step's name and its words": (
        r"(?<=step )washer|washer(?=:\n)|washer(?=\.\n)",
        "seal",
        [
            "steps seal renamed: washer -> seal",
            "steps seal do: Unscrew the suction hose and look at its washer. -> "
            "Unscrew the suction hose and look at its seal.",
        ],
    ),
    "a step that is gone": (
        r"step washer|  washer:\n(.*\n)*",
        lambda found: "done" if found[0].startswith("step") else "",
        [
            "paths done fewest-checks: 3 -> 2",
            "paths cause:leak unreached: 3 -> ",
            "steps washer removed: Look at the washer -> ",
            "steps float answer [within]: step washer -> done",
            "time",
        ],
    ),
    "a cause more": (
        r"\n  float: \{title: Float",
        "\n  seal: {title: Seal worn, remedy: Fit a new one.}\\g<0>",
        ["causes seal added:  -> Seal worn"],
    ),
}


@pytest.mark.parametrize(("old", "new", "expected"), EDITS.values(), ids=EDITS)
def test_one_edit(old: str, new: Any, expected: list[str]) -> None:
    """All that follows from it is told, and nothing else; of the time, whether it changed."""
    text = PUMP.replace(old, new) if old in PUMP else re.sub(old, new, PUMP)
    assert text != PUMP
    found = changes(PUMP, text)
    without_time = [line for line in found if not line.startswith("time")]
    assert without_time == [line for line in expected if not line.startswith("time")]
    assert bool(set(found) - set(without_time)) == any(line.startswith("time") for line in expected)


SHEET_EDITS = {
    "nothing": ("source: common", "source: common", []),
    "limits": (
        "under 10 ohm",
        "under 8 ohm",
        [
            "values float limits: under 10 ohm -> under 8 ohm",
            "values float judged [within]: 9.6 ohm or less -> 7.6 ohm or less",
            "values float judged [too close to call]: 9.7 to 10.3 ohm -> 7.7 to 8.3 ohm",
            "values float judged [above]: 10.4 ohm or more -> 8.4 ohm or more",
        ],
    ),
    "limits written otherwise": ("under 10 ohm", "under 0.01 kohm", []),
    "a figure": ("78 links", "80 links", ["values chain value: 78 links -> 80 links"]),
    "a figure less": (
        "  chain: {value: 78 links}\n",
        "",
        ["values chain removed: chain 78 links -> "],
    ),
    "a wire": ("wire: BK", "wire: RD", ["plugs plug.one wire: BK -> RD"]),
    "a pin more": (
        "two: {",
        "three: {at: b1, function: Spare}\n      two: {",
        ["plugs plug.three added:  -> Spare"],
    ),
    "a row more": ("rows: 1", "rows: 2", ["plugs plug rows: 1 -> 2"]),
    "its fuel": ("fuel: carburettor\n", "", ["whole fuel: carburettor -> "]),
}


@pytest.mark.parametrize(("old", "new", "expected"), SHEET_EDITS.values(), ids=SHEET_EDITS)
def test_one_edit_of_a_sheet(old: str, new: str, expected: list[str]) -> None:
    """Figures are told as the meter would judge them, plugs pin by pin."""
    assert old in MACHINE
    assert changes(MACHINE, MACHINE.replace(old, new)) == expected


def test_new_and_gone_files() -> None:
    """A file without its other half is told as a whole."""
    other = PUMP.replace("procedure: no-prime", "procedure: no-flow")
    found = compare_libraries(side(PUMP, other), side(PUMP, MACHINE))
    assert [(each.kind, each.name, each.state) for each in found] == [
        ("procedure", "no-flow", "removed"),
        ("machine", "old-pump", "added"),
    ]


def test_two_single_files_belong_together() -> None:
    """Whatever their names: one may be a renamed copy of the other."""
    other = PUMP.replace("procedure: no-prime", "procedure: no-flow")
    (found,) = compare_libraries(side(PUMP), side(other))
    assert (found.name, found.old_name, found.state) == ("no-flow", "no-prime", "changed")
    assert [told(each) for each in found.changes] == ["whole procedure: no-prime -> no-flow"]


def test_the_shipped_procedures_do_not_differ_from_themselves() -> None:
    """With everything in them, from shared pieces to hand-overs."""
    library = load_project([shipped_procedures()]).library
    whole = Side(library, frozenset(library.procedures))
    assert compare_libraries(whole, whole) == ()


def test_procedures_of_nothing_in_common() -> None:
    """Held against each other they are wholly different, and told so in the order of the parts."""
    library = load_project([shipped_procedures()]).library
    (found,) = compare_libraries(Side(library, {"wont-idle"}), Side(library, {"no-spark"}))
    parts = [each.part for each in found.changes]
    assert parts == sorted(parts, key=list(Part).index)
    assert {Part.CAUTIONS, Part.PATHS, Part.STEPS, Part.CAUSES, Part.WHOLE} <= set(parts)
