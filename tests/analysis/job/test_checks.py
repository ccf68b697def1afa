"""Tonight's next checks: on from where the log left off, else the next proof's first."""

from __future__ import annotations

import pytest

from pullcord.analysis.job.read import read_job_report
from pullcord.analysis.job.report import NextCheck
from tests.analysis.job.making import HEAD, RUNS, SAFE, SPARKS, TIGHT, make_job, make_library

NO_SPARK = "{date: 2026-02-05, procedure: spark, step: gap, answer: no spark}"
LEAKS = "{date: 2026-02-05, procedure: idle, step: start-it, answer: smells}"


def checks(*log: str, head: str = HEAD, **changes) -> tuple[NextCheck, ...]:
    """Return the next checks of a job in the small shed."""
    job = make_job(*log, head=head)
    return read_job_report(job, make_library(job, **changes)).next_checks


NEXT = {
    # Fuel costs least to begin with, then spark. Of what leads to further steps there, `strong
    # spark` leads to the end without asking anything more, so `no spark` is what may come next.
    "nothing begun": (
        [SAFE], ["leak look", "spark gap", "spark coil"],
        "It is for “Fuel proved”.",
    ),
    "not yet safe": (
        [], ["leak look", "spark gap", "spark coil"],
        "It is for “Fuel proved”. Show “Safe to work on” first.",
    ),
    "left in the middle": (
        [SAFE, NO_SPARK], ["spark coil", "leak look"],
        "“No spark” was left here on 2026-02-05.",
    ),
    "left at a step that asks nothing": (
        [SAFE, "{date: 2026-02-05, procedure: spark, step: fit-lead}"],
        ["spark gap", "spark coil", "leak look"],
        "“No spark” was left here on 2026-02-05.",
    ),
    "left on an answer nobody could give": (
        [SAFE, "{date: 2026-02-05, procedure: spark, step: coil, reading: 200 ohm}"],
        ["spark coil", "leak look"],
        "On 2026-02-05 nobody could say, or the reading was too close to call: ask it again.",
    ),
    "left for another procedure": (
        # What waits for a proof that has a procedure of its own is not for tonight.
        [SAFE, SPARKS, LEAKS], ["leak look"],
        "“It will not idle” led here on 2026-02-05.",
    ),
    "left in the middle before another was gone through": (
        [SAFE, NO_SPARK, "{date: 2026-02-06, procedure: leak, answer: done}"], ["spark coil"],
        "“No spark” was left here on 2026-02-05.",
    ),
    "a cause found": (
        [SAFE, SPARKS, "{date: 2026-02-05, procedure: leak, cause: tap}"], ["leak look"],
        "“Tap leaks” was found on 2026-02-05: put it right, then go through “It leaks” again to "
        "prove it.",
    ),
    "a cause put right": (
        [SAFE, SPARKS, "{date: 2026-02-05, procedure: leak, cause: tap, did: New tap.}"],
        ["leak look"], "“Tap leaks” was put right: go through “It leaks” again to prove it.",
    ),
    "all procedures passed": ([SAFE, SPARKS, TIGHT, RUNS], [], ""),
    "what it was begun for is proved by hand": (
        [SAFE, TIGHT, NO_SPARK, "{date: 2026-02-06, shows: spark-proved}"], ["idle start-it"],
        "It is for “Runs”.",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("log", "steps", "why"), NEXT.values(), ids=NEXT)
def test_the_next_checks_and_why_the_first_of_them(log, steps, why) -> None:
    """At most three, each a step that asks something."""
    found = checks(*log)
    assert [f"{each.procedure} {each.step}" for each in found] == steps
    assert (found[0].why if found else "") == why


def test_a_check_tells_what_it_takes_with_all_that_comes_before_it() -> None:
    """Minutes and tools of the steps that only do something count with the check they lead to."""
    check = next(each for each in checks(SAFE) if each.step == "gap")
    assert (check.title, check.minutes, check.tools) == ("Look at the gap", 5, ("Test lead",))
    assert check.why.endswith("Do “Fit the lead” first.")


def test_the_likeliest_way_is_followed_and_said() -> None:
    """Of 32/3 odds, `no spark` has unit and coil: 3 of them, 28 in a hundred."""
    coil = next(each for each in checks(SAFE) if each.step == "coil")
    assert coil.why == "Comes next if the answer is “no spark”, as about 28 times in 100."


def test_a_way_that_asks_nothing_more_is_not_followed() -> None:
    """`strong spark` is by far the likeliest, but only the lead is to be taken off after it."""
    library = make_library()
    spark = library.procedures["spark"].model_copy(update={"other_odds": 90.0})
    found = checks(SAFE, TIGHT, procedures={**library.procedures, "spark": spark})
    assert [each.step for each in found] == ["gap", "coil"]


def test_a_procedure_for_other_machines_is_passed_over() -> None:
    """A procedure that does not fit the sheet is not proposed."""
    library = make_library()
    leak = library.procedures["leak"]
    other = leak.model_copy(update={"fits": leak.fits.model_copy(update={"kind": ("pump",)})})
    procedures = {**library.procedures, "leak": other}
    assert "leak" not in {each.procedure for each in checks(SAFE, procedures=procedures)}


def test_a_procedure_that_cannot_be_walked_is_passed_over() -> None:
    """Its file has errors of its own; the report still comes."""
    library = make_library()
    leak = library.procedures["leak"].model_copy(update={"start": "nowhere"})
    found = checks(SAFE, procedures={**library.procedures, "leak": leak})
    assert [each.step for each in found] == ["gap", "coil"]
