"""A comparison as a person and a program read it."""

from __future__ import annotations

import json

from pullcord.analysis.diff import Change, Difference, Part, compare_libraries
from pullcord.pages.diff.json_ import diff_json
from pullcord.pages.diff.text import WIDTH, diff_text
from pullcord.pages.diff.words import read_diff_words
from tests.analysis.diff.sides import MACHINE, PUMP, side

WORDS = read_diff_words()
EDITED = (
    PUMP.replace("under 10 ohm", "under 8 ohm")
    .replace("near: moving-parts", "near: hot-parts")
    .replace("above: cause float", "above: cause leak")
    .replace("Take out the filler plug and look for water.", "Take out the filler plug. " * 3)
    .replace("odds: 4", "odds: 1")
)


def test_a_change_as_it_is_read() -> None:
    """What may hurt first, then the ways, then the steps; short things on one line."""
    sheet = MACHINE.replace("78 links", "80 links")
    text = diff_text(compare_libraries(side(PUMP, MACHINE), side(EDITED, sheet)), WORDS)
    assert text.splitlines() == [
        "procedure no-prime: Pump will not prime",
        "",
        "  Cautions",
        "    step float",
        "      hazard hot parts: new: WARNING",
        "      hazard moving parts: gone, it was: WARNING",
        "    to wear, work gloves: new: needed",
        "    to wear, close clothes: gone, it was: needed",
        "    to wear, eyes: gone, it was: needed",
        "    to have ready, way to stop: gone, it was: needed",
        "",
        "  Ways",
        "    cause leak",
        "      checks on the shortest way: 3 -> 2",
        "    cause float",
        "      can no longer be reached; checks on the shortest way were 2",
        "",
        "  Steps",
        "    casing",
        "      instruction",
        "        - Take out the filler plug and look for water.",
        "        + Take out the filler plug. Take out the filler plug. Take out the filler plug.",
        "    float",
        "      near: moving-parts -> hot-parts",
        "      general limits: under 10 ohm -> under 8 ohm",
        '      answer "above": cause float -> cause leak',
        '      the meter shows, for "within": 9.6 ohm or less -> 7.6 ohm or less',
        '      the meter shows, for "too close to call": 9.7 to 10.3 ohm -> 7.7 to 8.3 ohm',
        '      the meter shows, for "above": 10.4 ohm or more -> 8.4 ohm or more',
        "",
        "  Causes",
        "    dry",
        "      odds: 4 -> 1",
        "",
        "  Time to an answer",
        *[line for line in text.splitlines() if line.startswith(("    minutes", "    checks"))],
        "",
        "machine sheet old-pump: Old pump",
        "",
        "  Figures",
        "    chain",
        "      value: 78 links -> 80 links",
    ]


def test_nothing_and_whole_files() -> None:
    """That nothing differs is said; a file that is new or gone is one line."""
    assert diff_text((), WORDS) == "Nothing differs in meaning."
    found = compare_libraries(side(PUMP), side(MACHINE))
    assert diff_text(found, WORDS).split("\n\n") == [
        "procedure no-prime: Pump will not prime (gone)",
        "machine sheet old-pump: Old pump (new)",
    ]


def test_every_kind_of_change_has_its_words() -> None:
    """Nothing is left in braces, whatever stands in the texts, and no line is too long."""
    hostile = "{old} {0} } { " * 12
    changes = tuple(
        Change(Part.STEPS, "x", what, old, new, hostile)
        for what in (*WORDS, "time", "unheard-of")
        for old, new in ((hostile, hostile + "x"), ("", hostile), (hostile, ""), ("a", "b"))
    )
    text = diff_text([Difference("procedure", "x", "X", "changed", changes)], WORDS)
    assert "{detail}" not in text
    assert "{new}" not in text
    assert max(map(len, text.splitlines())) <= WIDTH


def test_a_program_gets_all_of_it() -> None:
    """Every change with its parts, in a form with a number of its own."""
    read = json.loads(diff_json(compare_libraries(side(PUMP), side(EDITED))))
    assert read["format"] == 1
    (found,) = read["differences"]
    assert (found["kind"], found["name"], found["state"]) == ("procedure", "no-prime", "changed")
    assert {
        "part": "paths",
        "at": "cause:leak",
        "what": "fewest-checks",
        "detail": "",
        "old": "3",
        "new": "2",
    } in found["changes"]
