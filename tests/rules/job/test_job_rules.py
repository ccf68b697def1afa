"""Job logs with slips in them: each is found at its line and column, all in one run."""

from __future__ import annotations

import pytest

from tests.analysis.job.making import HEAD, IDLE, LEAK, MACHINE, SPARK, STAGES
from tests.rules.files import check_files

SHED = {
    "spark.yaml": SPARK,
    "leak.yaml": LEAK,
    "idle.yaml": IDLE,
    "old-bike.yaml": MACHINE,
    "small.yaml": STAGES,
}

# What stands below the head of a job, whose last line is the fifth, and what is found in it.
CASES = {
    "nothing to find": (
        """\
wanted:
  chain: {title: Chain, price: 32, serves: drives, after: fuel-proved}
log:
  - {date: 2026-02-01, shows: safe, unproves: [runs], drains: petrol}
  - {date: 2026-02-01 19:40, procedure: spark, step: fit-lead}
  - {date: 2026-02-01, procedure: spark, step: coil, reading: 0.25 kohm, answer: within}
  - {date: 2026-02-02, procedure: spark, step: coil, reading: OL}
  - {date: 2026-02-02, procedure: spark, step: lead-off, answer: done}
  - {date: 2026-02-02, procedure: spark, cause: coil, did: New coil.}
  - {date: 2026-02-02, procedure: leak, answer: done}
  - {date: 2026-02-02, value: chain, reading: 78 links}
  - {date: 2026-02-03, parts: [{title: Chain, price: 30, wanted: chain, serves: drives}]}
""",
        [],
    ),
    "names of procedures": (
        """\
log:
  - {date: 2026-02-01, procedure: sparks, step: nowhere, answer: no, cause: none}
  - {date: 2026-02-01, procedure: spark, step: gapp}
  - {date: 2026-02-01, procedure: spark, cause: plugg}
  - {date: 2026-02-01, procedure: spark, step: gap, answer: blue}
  - {date: 2026-02-01, procedure: spark, step: fit-lead, answer: done}
  - {date: 2026-02-01, procedure: spark, answer: strong spark}
  - {date: 2026-02-01, procedure: spark, step: gapp, answer: blue, reading: 3 V}
""",
        [
            "7:35 unknown-log-procedure",
            "8:48 unknown-log-step",
            "9:49 unknown-log-cause",
            "10:61 unknown-log-answer",
            "11:66 unknown-log-answer",
            "12:50 unknown-log-answer",
            "13:48 unknown-log-step",
        ],
    ),
    "of no procedure": (
        """\
log:
  - {date: 2026-02-01, step: gap, answer: no spark}
  - {date: 2026-02-01, cause: plug}
  - {date: 2026-02-01, answer: done}
""",
        [
            "7:30 step-without-procedure",
            "8:31 step-without-procedure",
            "9:32 step-without-procedure",
        ],
    ),
    "readings": (
        """\
log:
  - {date: 2026-02-01, value: coil-source, reading: 250 ohm}
  - {date: 2026-02-01, value: source-coil, reading: 250}
  - {date: 2026-02-01, value: source-coil, reading: 250 V}
  - {date: 2026-02-01, procedure: spark, step: coil, reading: 250 Ohmm}
  - {date: 2026-02-01, procedure: spark, step: gap, reading: 3 mm}
  - {date: 2026-02-01, reading: 3 mm}
  - {date: 2026-02-01, procedure: spark, step: coil, answer: within, reading: 20 ohm}
  - {date: 2026-02-01, procedure: spark, step: coil, answer: below, reading: 201 ohm}
""",
        [
            "7:31 unknown-log-value",
            "8:53 unreadable-log-reading",
            "9:53 unreadable-log-reading",
            "10:63 unreadable-log-reading",
            "11:62 reading-of-nothing",
            "12:33 reading-of-nothing",
            "13:62 answer-against-reading",
        ],
    ),
    "stages and parts": (
        """\
wanted:
  chain: {title: Chain, price: 32, serves: driving, after: [runs, run]}
log:
  - {date: 2026-02-01, shows: [safe, sound], unproves: saef}
  - date: 2026-02-01
    parts:
      - {title: Chain, price: 30, wanted: chian, serves: drive}
      - {title: Chain, price: 30, wanted: chain}
      - {title: Chain, price: 30, wanted: chain}
""",
        [
            "7:44 unknown-stage",
            "7:67 unknown-stage",
            "9:38 unknown-stage",
            "9:56 unknown-stage",
            "12:43 unknown-wanted",
            "12:58 unknown-stage",
            "14:43 bought-twice",
        ],
    ),
    "days": (
        """\
given-up: 2026-02-20
log:
  - {date: 2026-01-31, note: A day early.}
  - {date: 2026-02-03 20:00, note: Evening.}
  - {date: 2026-02-03, note: The same day.}
  - {date: 2026-02-03 19:00, note: Nobody knows when the one above was.}
  - {date: 2026-02-02, note: Forgotten.}
  - {date: 2026-02-21, minutes: 10}
""",
        [
            "8:12 log-before-taken-in",
            "12:12 log-out-of-order",
            "13:5 entry-says-nothing",
            "13:12 log-after-given-up",
        ],
    ),
    "given up before it came": (
        "given-up: 2026-01-20\nlog:\n  - {date: 2026-02-02, note: So what.}\n",
        ["6:11 log-after-given-up"],
    ),
}


@pytest.mark.parametrize(("body", "expected"), CASES.values(), ids=CASES)
def test_every_slip_is_found_where_it_stands(body, expected) -> None:
    """One slip, one finding, and nothing is found in what is right."""
    files = {**SHED, "old-bike-spring.yaml": HEAD + body}
    found = check_files({name: text.encode() for name, text in files.items()})
    own = [each for each in found if each.file == "old-bike-spring.yaml"]
    assert [f"{each.line}:{each.column} {each.rule}" for each in own] == expected
    assert all(each.mend for each in own)


def test_the_nearest_name_is_proposed() -> None:
    """A slip of the finger is mended by reading one line."""
    files = {**SHED, "old-bike-spring.yaml": HEAD.replace("machine: old-bike", "machine: old-bik")}
    found = check_files({name: text.encode() for name, text in files.items()})
    (finding,) = [each for each in found if each.file == "old-bike-spring.yaml"]
    assert (finding.rule, finding.mend) == ("unknown-machine", "did you mean `old-bike`?")


def test_a_step_of_one_procedure_alone_tells_which_it_is() -> None:
    """The mend names the procedure that has the step."""
    body = "log:\n  - {date: 2026-02-02, step: gap, answer: no spark}\n"
    files = {**SHED, "old-bike-spring.yaml": HEAD + body}
    found = check_files({name: text.encode() for name, text in files.items()})
    (finding,) = [each for each in found if each.file == "old-bike-spring.yaml"]
    assert finding.mend == "add `procedure: spark` above it"


def test_a_procedure_with_errors_of_its_own_is_not_unknown() -> None:
    """What is wrong is found in its file; the log that names it is right."""
    body = "log:\n  - {date: 2026-02-02, procedure: leak, step: look, answer: tap}\n"
    files = {**SHED, "leak.yaml": "procedure: leak\n", "old-bike-spring.yaml": HEAD + body}
    found = check_files({name: text.encode() for name, text in files.items()})
    assert [each for each in found if each.file in ("old-bike-spring.yaml", "small.yaml")] == []
