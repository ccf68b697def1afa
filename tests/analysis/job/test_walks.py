"""Entries as walks: where each began, what was answered, how it ended."""

from __future__ import annotations

import pytest

from pullcord.analysis.job.walks import walks_of
from tests.analysis.job.making import make_given

FIT = "procedure: spark, step: fit-lead"
NO = "procedure: spark, step: gap, answer: no spark"
STRONG = "procedure: spark, step: gap, answer: strong spark"

# Entries, and each walk as the steps answered and the node it came to.
WALKS = {
    "steps in a row": ([FIT, NO], ["fit-lead= gap=no spark > step:coil"]),
    "a reading is an answer": (
        [NO, "procedure: spark, step: coil, reading: 20 ohm"],
        ["gap=no spark coil=below > cause:coil"],
    ),
    "a reading too close to call settles nothing": (
        [NO, "procedure: spark, step: coil, reading: 200 ohm"], ["gap=no spark coil= > None"],
    ),
    "done again, with another answer": ([FIT, NO, STRONG], [
        "fit-lead= gap=strong spark > step:lead-off",
    ]),
    "begun anew": ([FIT, NO, FIT], [
        "fit-lead= gap=no spark > step:coil", "fit-lead= > step:gap",
    ]),
    "ended, and begun anew": (["procedure: spark, cause: plug", NO], [
        "> cause:plug", "gap=no spark > step:coil",
    ]),
    "the end said twice": (
        ["procedure: spark, step: lead-off", "procedure: spark, answer: done"],
        ["lead-off= > done"],
    ),
    "what belongs to no procedure": (["note: Rained.", "step: gap"], []),
    "a procedure named and nothing else": (["procedure: spark, note: Read it."], []),
}  # fmt: skip


@pytest.mark.parametrize(("log", "walks"), WALKS.values(), ids=WALKS)
def test_entries_are_read_as_walks(log, walks) -> None:
    """A walk ends at a cause, at `done` or at a hand-over, or begins anew at its first step."""
    given = make_given(*(f"{{date: 2026-02-02, {entry}}}" for entry in log))
    found = walks_of(given).get("spark", ())
    said = [
        " ".join([*(f"{step}={answer}" for step, answer in walk.answers), f"> {walk.at}"])
        for walk in found
    ]
    assert said == walks


def test_a_procedure_called_for_again_is_not_passed_any_more() -> None:
    """It was gone through to its end, and then another procedure led to it."""
    passed = "{date: 2026-02-02, procedure: leak, answer: done}"
    smells = "{date: 2026-02-03, procedure: idle, step: start-it, answer: smells}"
    assert walks_of(make_given(passed))["leak"][-1].is_passed
    assert not walks_of(make_given(passed, smells))["leak"][-1].is_passed
    assert walks_of(make_given(passed, smells, passed))["leak"][-1].is_passed


def test_a_cause_named_again_with_what_was_done_is_put_right() -> None:
    """Found on one evening, put right on the next: one walk."""
    found = "{date: 2026-02-02, procedure: leak, cause: tap}"
    cured = "{date: 2026-02-09, procedure: leak, cause: tap, did: New tap.}"
    (walk,) = walks_of(make_given(found, cured))["leak"]
    assert (walk.is_over, walk.is_remedied, walk.entry) == (True, True, 1)
