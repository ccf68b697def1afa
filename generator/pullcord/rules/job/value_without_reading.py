"""A value that was read has its reading.

An entry that names a value of the sheet says that it was measured; without the number it proves
nothing and cannot be drawn beside the others.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "value-without-reading"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        value: priming-time
        reading: 45 s
        note: Quicker than last year.
    """
)

FAILING = mended(MENDED, "    reading: 45 s\n", "")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every value without a reading."""
    for place, entry in enumerate(job.log):
        if entry.value is not None and entry.reading is None:
            message = f"nothing says what `{entry.value}` read"
            yield Flaw(("log", place, "value"), message, "add `reading:`, or delete `value`")
