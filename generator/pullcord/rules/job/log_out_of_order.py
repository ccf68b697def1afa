"""The entries stand in the order of their days.

What stands last counts last: it decides what is proved and how the machine was left, whatever day
it bears. An entry that was forgotten is put where it belongs.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "log-out-of-order"
# The order decides how the machine is said to have been left.
IS_SAFETY = True

MENDED = job_example(
    """
    log:
      - {date: 2026-02-07 18:30, note: Took it apart.}
      - {date: 2026-02-07, note: Put it together again.}
      - {date: 2026-02-14, note: Water came.}
    """
)

FAILING = mended(MENDED, "2026-02-14", "2026-02-04")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every entry that is earlier than the one above it."""
    for place, (before, entry) in enumerate(zip(job.log, job.log[1:], strict=False), start=1):
        both = min(len(before.date), len(entry.date))
        if entry.date[:both] < before.date[:both]:
            yield Flaw(
                ("log", place, "date"),
                f"{entry.date} is earlier than {before.date} above it, but counts as later",
                "move the entry to where it belongs, or mend its day",
            )
