"""A reading in the log is a number with its unit, or over-range.

`250 ohm`, `12.6 V`, `OL`. It must be of the quantity that was asked for, or it can neither be
judged nor drawn beside the others.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.job.given import given_of
from pullcord.analysis.job.measured import parse_shown
from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.readings.unit import ReadingError
from pullcord.rules.example_job import job_example, mended

ID = "unreadable-log-reading"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        value: priming-time
        reading: 45 s
    """
)

FAILING = mended(MENDED, "reading: 45 s", "reading: a good minute")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every reading that cannot be read as what was measured."""
    for note in given_of(job, library).notes:
        reading = note.entry.reading
        if note.measured is not None and reading is not None:
            try:
                parse_shown(reading, note.measured.quantity)
            except ReadingError as error:
                yield Flaw(("log", note.place, "reading"), str(error), error.mend)
