"""What a shop's own jobs have found."""

from __future__ import annotations

import pytest

from pullcord.analysis.job.counts import count_outcomes
from tests.analysis.job.making import HEAD, make_job, make_library

TAP = "procedure: leak, step: look, answer: tap"

COUNTS = {
    "nothing": ([], {}),
    "a cause": (["procedure: leak, cause: tap"], {"cause:tap": 1}),
    "a cause by its answer": ([TAP], {"cause:tap": 1}),
    "named again when it is put right": (
        [TAP, "procedure: leak, cause: tap, did: New tap."], {"cause:tap": 1},
    ),
    "the proof of the remedy": (
        [TAP, "procedure: leak, cause: tap, did: New tap.", "procedure: leak, answer: done"],
        {"cause:tap": 1},
    ),
    "nothing found": (["procedure: leak, answer: done"], {"done": 1}),
    "nothing found, then something": (
        ["procedure: leak, answer: done", "procedure: leak, cause: hose"],
        {"cause:hose": 1, "done": 1},
    ),
    "found once more after a remedy": (
        [
            "procedure: leak, cause: tap, did: New tap.", TAP,
            "procedure: leak, cause: tap, did: Another.",
        ],
        {"cause:tap": 2},
    ),
    "handed over": (["procedure: idle, step: start-it, answer: smells"], {}),
    "left in the middle": (["procedure: spark, step: gap, answer: no spark"], {}),
    "of another procedure": (["procedure: spark, cause: coil"], {}),
    "a cause nobody knows": (["procedure: leak, cause: gremlin"], {}),
}  # fmt: skip


@pytest.mark.parametrize(("log", "counts"), COUNTS.values(), ids=COUNTS)
def test_finished_walks_are_counted_by_where_they_ended(log, counts) -> None:
    """Only walks that came to an end, and the proof of a remedy is no walk of its own."""
    job = make_job(*(f"{{date: 2026-02-01, {entry}}}" for entry in log))
    library = make_library(job)
    assert count_outcomes([job], library.procedures["leak"], library) == counts


def test_a_hand_over_is_an_outcome_of_the_procedure_that_hands_over() -> None:
    """It is named as its graph node is."""
    job = make_job("{date: 2026-02-01, procedure: idle, step: start-it, answer: never starts}")
    idle = make_library().procedures["idle"]
    assert count_outcomes([job], idle) == {"procedure:spark": 1}


def test_several_jobs_are_counted_together() -> None:
    """Each machine by itself: the remedy on one does not hide what another shows."""
    cured = make_job("{date: 2026-02-01, procedure: leak, cause: tap, did: New tap.}")
    sound = make_job("{date: 2026-02-01, procedure: leak, answer: done}", head=HEAD)
    leak = make_library().procedures["leak"]
    assert count_outcomes([cured, sound], leak) == {"cause:tap": 1, "done": 1}


def test_a_reading_without_an_answer_needs_the_sheet() -> None:
    """With the library the reading tells the cause; without it nobody can say."""
    job = make_job("{date: 2026-02-01, procedure: spark, step: coil, reading: 20 ohm}")
    library = make_library(job)
    spark = library.procedures["spark"]
    assert count_outcomes([job], spark, library) == {"cause:coil": 1}
    assert count_outcomes([job], spark) == {}
