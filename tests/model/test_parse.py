"""What is wrong with a record is said in the author's words."""

from __future__ import annotations

import pytest

from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.model.parse import parse_procedure, parse_record
from pullcord.model.procedure import Procedure

WHOLE = {
    "procedure": "no-prime",
    "title": "Pump will not prime",
    "symptom": "No water comes.",
    "about": "For a pump whose engine runs.",
    "start": "casing",
    "causes": {"dry": {"title": "No water", "remedy": "Fill it.", "parts": "2.50"}},
    "steps": {
        "casing": {
            "title": "Casing",
            "do": "Look.",
            "opens": "guard",
            "minutes": "2.5",
            "ask": "Full?",
            "answers": {"no": "cause dry", "012": "done"},
        }
    },
}


def test_a_whole_procedure_is_taken() -> None:
    """Numbers become numbers, single words become lists, answers stay as they were written."""
    procedure = parse_procedure(WHOLE)
    assert isinstance(procedure, Procedure)
    step = procedure.steps["casing"]
    assert (step.opens, step.minutes, list(step.answers)) == (("guard",), 2.5, ["no", "012"])
    assert str(procedure.causes["dry"].parts) == "2.50"


CASES = {
    "unknown key": ({"titel": "x"}, (("titel",), "unknown-key", "did you mean `title`?")),
    "key in Python's spelling": (
        {"also_said": "x"},
        (("also_said",), "unknown-key", "did you mean `also-said`?"),
    ),
    "key like no other": (
        {"zzz": "x"},
        (("zzz",), "unknown-key", "the keys that may stand here are `procedure`, `title`,"),
    ),
    "text too long": (
        {"title": "x" * 121},
        (("title",), "text-too-long", "say it shorter"),
    ),
    "blank text": ({"title": "  "}, (("title",), "empty-value", "write the value")),
    "line break": ({"title": "a\nb"}, (("title",), "wrong-value", "take out the line break")),
    "list for text": ({"title": ["x"]}, (("title",), "wrong-shape", "write the value on the same")),
    "text for keys": ({"tools": "x"}, (("tools",), "wrong-shape", "write them below the key")),
    "keys for a list": ({"before": {"a": "b"}}, (("before",), "wrong-shape", "write one `- item`")),
    "bad name": (
        {"procedure": "No Prime!"},
        (("procedure",), "bad-name", "a name has small letters, digits and single hyphens, and"),
    ),
    "bad name of a tool": (
        {"tools": {"A_b": {"title": "x"}}},
        (("tools", "A_b"), "bad-name", "a name has small letters, digits and single hyphens, and"),
    ),
    "unknown word": (
        {"fits": {"ignition": ["magneto", "pionts"]}},
        (("fits", "ignition", 1), "unknown-word", "did you mean `points`?"),
    ),
    "comma in a number": ({"other-odds": "2,5"}, (("other-odds",), "wrong-number", "write `2.5`")),
    "not a number": ({"other-odds": "some"}, (("other-odds",), "wrong-number", "write digits")),
    "no number at all": ({"other-odds": "nan"}, (("other-odds",), "wrong-number", "write digits")),
    "list for a number": ({"other-odds": ["1"]}, (("other-odds",), "wrong-shape", "write digits")),
    "too large": ({"other-odds": "1e9"}, (("other-odds",), "wrong-number", "see whether")),
}


@pytest.mark.parametrize(("change", "expected"), CASES.values(), ids=CASES)
def test_a_slip_is_said_with_its_mend(change, expected) -> None:
    """One flaw, at its place, by its rule, with what to do."""
    flaws = parse_procedure({**WHOLE, **change})
    assert isinstance(flaws, tuple)
    assert [(flaw.at, flaw.rule) for flaw in flaws] == [expected[:2]]
    assert flaws[0].mend.startswith(expected[2])


TARGETS = {
    "nothing but a name": ("dry", "write `step NAME`, `cause NAME`, `procedure NAME` or `done`"),
    "a slip in the kind": ("cuase dry", "did you mean `cause dry`?"),
    "too many words": ("cause dry out", "write `step NAME`"),
    "done with a name": ("done dry", "write `step NAME`"),
    "nothing": ("", "write `step NAME`"),
}


@pytest.mark.parametrize(("target", "mend"), TARGETS.values(), ids=TARGETS)
def test_an_answer_that_leads_nowhere(target: str, mend: str) -> None:
    """An answer is pointed at by its own words, which may be anything."""
    step = {**WHOLE["steps"]["casing"], "answers": {"no": "cause dry", "[key] é": target}}
    (flaw,) = parse_procedure({**WHOLE, "steps": {"casing": step}})
    assert flaw.at == ("steps", "casing", "answers", "[key] é")
    assert (flaw.rule, flaw.is_key) == ("bad-target", False)
    assert flaw.mend.startswith(mend)


def test_missing_keys_say_what_they_are_for() -> None:
    """Each is asked for with its meaning, at the block that lacks it."""
    flaws = parse_procedure({**WHOLE, "steps": {"casing": {"title": "x"}}, "about": None})
    missing = [flaw for flaw in flaws if flaw.rule == "missing-key"]
    assert [(flaw.at, flaw.mend) for flaw in missing] == [
        (("steps", "casing"), "add `do:` (the instruction)")
    ]


@pytest.mark.parametrize("data", [None, "text", [], ["a"], 5], ids=str)
def test_what_is_no_mapping_is_refused(data: object) -> None:
    """Even that is one flaw and no more."""
    (flaw,) = parse_procedure(data)
    assert (flaw.at, flaw.rule) == ((), "wrong-shape")


def test_any_record_is_parsed_the_same_way() -> None:
    """Machine sheets and meters get the same words."""
    (flaw,) = parse_record(
        Machine,
        {"machine": "pump", "title": "Pump", "kind": "pump", "connectors": {"unit": {
            "title": "Unit", "rows": "x", "columns": "2", "pins": {},
        }}},
    )  # fmt: skip
    assert (flaw.at, flaw.rule) == (("connectors", "unit", "rows"), "wrong-number")
    (flaw,) = parse_record(
        MeterSheet, {"ranges": [{"up-to": "200 ohm", "step": "0.1", "digit": "3"}]}
    )
    assert (flaw.at, flaw.mend) == (("ranges", 0, "digit"), "did you mean `digits`?")


def test_a_flood_of_slips_is_cut_off() -> None:
    """Nobody reads more than a hundred."""
    flaws = parse_procedure({**WHOLE, **{f"k{number}": "x" for number in range(5000)}})
    assert len(flaws) == 100
