"""Which evidence proves a stage, what does not count, and what takes a proof back."""

from __future__ import annotations

import pytest

from pullcord.analysis.job.stages import all_before, order_of, read_stages
from pullcord.model.stage import StageList
from tests.analysis.job.making import RUNS, SAFE, SPARKS, TIGHT, make_given, read

PROVED, NOT_YET, BACK = "proved", "not yet", "taken back"
FITS = "{date: 2026-02-05, procedure: spark, step: fit-lead}"

# Log, stage, proof, day of the entry that decided, words of the sentence.
CASES = {
    "nothing said": ([], "safe", NOT_YET, None, "write so in the log"),
    "the job's own heading": ([], "taken-in", PROVED, "2026-02-01", "taken in on 2026-02-01"),
    "by hand": ([SAFE], "safe", PROVED, "2026-02-01", "shown by hand on 2026-02-01"),
    "by hand taken back": (
        [SAFE, "{date: 2026-02-09, unproves: safe}"],
        "safe", BACK, "2026-02-09", "does not hold",
    ),
    "nothing said, but where to look": ([SAFE], "spark-proved", NOT_YET, None, "“No spark”"),
    "waits for what comes before": ([], "spark-proved", NOT_YET, None, "“Safe to work on”"),
    "procedure to its end": (
        [SAFE, SPARKS], "spark-proved", PROVED, "2026-02-02", "gone through to its end",
    ),
    "last answer leads to the end": (
        [SAFE, "{date: 2026-02-03, procedure: leak, step: look, answer: nothing}"],
        "fuel-proved", PROVED, "2026-02-03", "“It leaks” was gone through",
    ),
    "procedure half way": (
        [SAFE, "{date: 2026-02-02, procedure: spark, step: gap, answer: no spark}"],
        "spark-proved", NOT_YET, "2026-02-02", "“Look at the gap” of “No spark” gave “no spark”",
    ),
    "evidence before its time": (
        [SPARKS], "spark-proved", NOT_YET, "2026-02-02", "“Safe to work on” must be shown as well",
    ),
    "what was missing comes later": ([SPARKS, SAFE], "spark-proved", PROVED, "2026-02-02", ""),
    "one answer of a step": (
        [SAFE, "{date: 2026-02-02, procedure: spark, step: gap, answer: strong spark}"],
        "spark-proved", PROVED, "2026-02-02", "gave “strong spark” on 2026-02-02",
    ),
    "the same step with another answer": (
        [SAFE, SPARKS, "{date: 2026-02-07, procedure: spark, step: gap, answer: no spark}"],
        "spark-proved", BACK, "2026-02-07", "gave “no spark” on 2026-02-07",
    ),
    "reading within": (
        [SAFE, "{date: 2026-02-02, value: plug-gap, reading: 0.65 mm}"],
        "spark-proved", PROVED, "2026-02-02", "“Plug gap” read 0.65 mm on 2026-02-02, within",
    ),
    "later reading outside": (
        [SAFE, SPARKS, "{date: 2026-02-07, value: plug-gap, reading: 0.8 mm}"],
        "spark-proved", BACK, "2026-02-07", "read 0.8 mm on 2026-02-07, outside its limits",
    ),
    "reading of something else": (
        [SAFE, SPARKS, "{date: 2026-02-07, value: source-coil, reading: 10 ohm}"],
        "spark-proved", PROVED, "2026-02-02", "",
    ),
    "cause found later": (
        [SAFE, SPARKS, "{date: 2026-02-08, procedure: spark, cause: plug}"],
        "spark-proved", BACK, "2026-02-08", "“Plug fouled” was found in “No spark” on 2026-02-08",
    ),
    "cause by an answer": (
        [SAFE, TIGHT, "{date: 2026-02-08, procedure: leak, step: look, answer: tap}"],
        "fuel-proved", BACK, "2026-02-08", "“Tap leaks” was found",
    ),
    "cause by a reading": (
        [SAFE, SPARKS, "{date: 2026-02-08, procedure: spark, step: coil, reading: 12 ohm}"],
        "spark-proved", BACK, "2026-02-08", "“Source coil bad” was found",
    ),
    "remedy alone proves nothing": (
        [SAFE, "{date: 2026-02-08, procedure: spark, cause: plug, did: New plug.}"],
        "spark-proved", NOT_YET, "2026-02-08", "“Plug fouled” was found",
    ),
    "remedy proved by going through again": (
        [
            SAFE, "{date: 2026-02-08, procedure: spark, cause: plug, did: New plug.}",
            "{date: 2026-02-09, procedure: spark, answer: done}",
        ],
        "spark-proved", PROVED, "2026-02-09", "",
    ),
    "left for another procedure": (
        [
            SAFE, SPARKS, TIGHT, RUNS,
            "{date: 2026-02-10, procedure: idle, step: start-it, answer: never starts}",
        ],
        "runs", BACK, "2026-02-10", "“It will not idle” led to “No spark” on 2026-02-10",
    ),
    "its symptom came back": (
        [SAFE, TIGHT, "{date: 2026-02-10, procedure: idle, step: start-it, answer: smells}"],
        "fuel-proved", BACK, "2026-02-10", "led to “It leaks”",
    ),
    "what it rests on was taken back": (
        [SAFE, SPARKS, TIGHT, RUNS, "{date: 2026-02-10, procedure: leak, cause: hose}"],
        "runs", BACK, "2026-02-10", "“Fuel proved” must be shown as well",
    ),
    "what it rests on holds again": (
        [
            SAFE, SPARKS, TIGHT, RUNS, "{date: 2026-02-10, procedure: leak, cause: hose}",
            "{date: 2026-02-11, procedure: leak, answer: done}",
        ],
        "runs", PROVED, "2026-02-04", "",
    ),
    "shown with a bypass on": (
        [SAFE, "{date: 2026-02-02, fits: bypass, shows: spark-proved}"],
        "spark-proved", NOT_YET, None, "but a bypass is fitted, so it does not count",
    ),
    "bypass off later, evidence not repeated": (
        [
            SAFE, "{date: 2026-02-02, fits: bypass, shows: spark-proved}",
            "{date: 2026-02-03, takes-off: bypass}",
        ],
        "spark-proved", NOT_YET, None, "does not count",
    ),
    "lead fitted within the procedure and off at its end": (
        [
            SAFE, FITS, "{date: 2026-02-05, procedure: spark, step: gap, answer: strong spark}",
            "{date: 2026-02-05, procedure: spark, step: lead-off}",
        ],
        "spark-proved", PROVED, "2026-02-05", "gone through to its end",
    ),
    "answer got with the lead on": (
        [SAFE, FITS, "{date: 2026-02-05, procedure: spark, step: gap, answer: strong spark}"],
        "spark-proved", NOT_YET, None, "but a test lead is fitted",
    ),
    "put on and off in one evening": (
        [SAFE, "{date: 2026-02-02, fits: bypass, takes-off: bypass, shows: spark-proved}"],
        "spark-proved", NOT_YET, None, "does not count",
    ),
    "bypass fitted after the proof": (
        [SAFE, SPARKS, TIGHT, RUNS, "{date: 2026-02-12, fits: bypass}"],
        "runs", BACK, "2026-02-12", "bypass is fitted, on since 2026-02-12: until that is off",
    ),
    "and taken off again": (
        [
            SAFE, SPARKS, TIGHT, RUNS, "{date: 2026-02-12, fits: bypass}",
            "{date: 2026-02-13, takes-off: bypass}",
        ],
        "runs", PROVED, "2026-02-04", "",
    ),
    "a failure counts, whatever is fitted": (
        [SAFE, SPARKS, "{date: 2026-02-12, fits: bypass, procedure: spark, cause: plug}"],
        "spark-proved", BACK, "2026-02-12", "“Plug fouled” was found",
    ),
    "shown and disproved at once": (
        [SAFE, "{date: 2026-02-12, shows: runs, unproves: [runs]}"],
        "runs", NOT_YET, "2026-02-12", "does not hold",
    ),
    "shown by hand against a cause of the same evening": (
        [SAFE, "{date: 2026-02-12, shows: spark-proved, procedure: spark, cause: plug}"],
        "spark-proved", PROVED, "2026-02-12", "by hand",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("log", "stage", "proof", "since", "words"), CASES.values(), ids=CASES)
def test_the_latest_entry_that_says_anything_decides(log, stage, proof, since, words) -> None:
    """A stage is proved, not yet, or taken back, and its sentence says by what and when."""
    states = {state.name: state for state in read_stages(make_given(*log))}
    state = states[stage]
    assert (state.proof, state.since) == (proof, since)
    assert words in state.why


@pytest.mark.parametrize(("log", "stage"), [case[:2] for case in CASES.values()], ids=CASES)
def test_every_stage_says_why_in_one_sentence(log, stage) -> None:
    """What a page prints is a whole sentence, and its day is that of the entry it names."""
    given = make_given(*log)
    for state in read_stages(given):
        assert state.why[0].isupper() or state.why.startswith("“")
        assert state.why.endswith(".")
        assert state.entry is None or given.job.log[state.entry].date[:10] == state.since


def test_where_to_look_begins_with_what_proves_it() -> None:
    """A stage whose proof is a procedure sends one there, though it looks for faults elsewhere."""
    stages = """\
stages: small
stage:
  runs: {title: R, means: R., proved-by: [{procedure: idle}], looked-for-in: [leak, idle]}
  drives: {title: D, means: D., proved-by: [{procedure: spark}]}
  idles: {title: I, means: I., proved-by: [{procedure: spark, step: gap, answers: strong spark}]}
"""
    why = {state.name: state.why for state in read_stages(make_given(stages=stages))}
    assert "go through “It will not idle” and “It leaks”" in why["runs"]
    assert "go through “No spark”" in why["drives"]
    assert "write so in the log" in why["idles"]


def test_a_reading_too_close_to_call_changes_nothing() -> None:
    """The meter cannot say, so the log has not said either."""
    stages = """\
stages: small
stage:
  charges: {title: Charges, means: It charges., proved-by: [{value: charging-voltage}]}
"""
    good = "{date: 2026-02-02, value: charging-voltage, reading: 14.2 V}"
    close = "{date: 2026-02-03, value: charging-voltage, reading: 14.62 V}"
    bad = "{date: 2026-02-04, value: charging-voltage, reading: 12.4 V}"

    def proof(*log: str) -> str:
        return read_stages(make_given(*log, stages=stages))[0].proof

    assert [proof(close), proof(good, close), proof(good, close, bad)] == [NOT_YET, PROVED, BACK]


CIRCLE = """\
stages: round
stage:
  one: {title: One, means: One., after: two}
  two: {title: Two, means: Two., after: [one, nobody-knows]}
  three: {title: Three, means: Three., after: two}
"""


def test_a_circle_of_stages_is_not_proved_and_does_no_harm() -> None:
    """The rules report it; a report of it still comes to an end."""
    log = "{date: 2026-02-02, shows: [one, two, three]}"
    states = read_stages(make_given(log, stages=CIRCLE))
    assert [state.proof for state in states] == [NOT_YET] * 3


def test_stages_come_behind_what_they_come_after() -> None:
    """Whatever order the file has, a stage is read when those before it are known."""
    stages = read(CIRCLE.replace("[one, nobody-knows]", "[]"), StageList).stage
    assert order_of(stages) == ("two", "one", "three")
    assert all_before(stages, ("three",)) == ("two", "three")


def test_a_long_row_of_stages_is_no_harder_than_a_short_one() -> None:
    """Nobody writes so many; a file that does must not break the report."""
    rows = [f"  s{n}: {{title: S, means: S., after: s{n + 1}}}\n" for n in range(1200)]
    stages = f"stages: long\nstage:\n{''.join(rows)}  s1200: {{title: S, means: S.}}\n"
    states = read_stages(make_given("{date: 2026-02-02, shows: [s1200, s1199]}", stages=stages))
    assert [state.name for state in states if state.proof == "proved"] == ["s1199", "s1200"]
