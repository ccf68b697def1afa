"""An entry says what was done, read, bought or seen.

A day alone tells nobody anything. A line of `note` is enough.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "entry-says-nothing"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        note: Rolled it into the dry.
    """
)

FAILING = mended(MENDED, "    note: Rolled it into the dry.\n", "")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every entry of which nothing but its day, minutes or warmth is known."""
    for place, entry in enumerate(job.log):
        if entry.model_fields_set <= {"date", "minutes", "celsius"}:
            message, mend = "this entry says nothing", "write what was done, or delete it"
            yield Flaw(("log", place), message, mend)
