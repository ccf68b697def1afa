"""No entry is older than the day the machine was taken in.

One of the two days is mostly a slip. What was spent on it in earlier years goes under
`spent-before` and `hours-before`.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "log-before-taken-in"

MENDED = job_example(
    """
    log:
      - {date: 2026-02-07, note: Took it apart.}
    """
)

FAILING = mended(MENDED, "2026-02-07", "2025-02-07")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every entry from before the machine was taken in."""
    for place, entry in enumerate(job.log):
        if entry.date[:10] < job.taken_in:
            message = f"{entry.date} is before {job.taken_in}, when it was taken in"
            yield Flaw(("log", place, "date"), message, "mend the day, or that of `taken-in`")
