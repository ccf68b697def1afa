"""Nothing is done on a machine that was given up.

Either it was taken up again, then `given-up` goes; or a day is wrong. While the line stands, the
report proposes no check and nothing to buy.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "log-after-given-up"

MENDED = job_example(
    """
    given-up: 2026-03-01
    log:
      - {date: 2026-02-07, note: Took it apart.}
    """
)

FAILING = mended(MENDED, "date: 2026-02-07", "date: 2026-03-07")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for a day given up before it came, and for every entry from after that day."""
    if job.given_up is None:
        return
    if job.given_up < job.taken_in:
        message = f"it was given up on {job.given_up}, before it was taken in on {job.taken_in}"
        yield Flaw(("given-up",), message, "mend the day, or that of `taken-in`")
    for place, entry in enumerate(job.log):
        if entry.date[:10] > job.given_up >= job.taken_in:
            message = f"{entry.date} is after {job.given_up}, when it was given up"
            yield Flaw(("log", place, "date"), message, "mend the day, or delete `given-up`")
