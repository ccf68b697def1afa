"""An entry names a procedure that is there.

What was done by a procedure nobody knows proves nothing, and where the log left off cannot be told.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "unknown-log-procedure"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        procedure: no-prime
        answer: done
    """,
    "no-prime.yaml",
)

FAILING = mended(MENDED, "no-prime", "no-primer")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every entry whose procedure does not exist."""
    known = {*library.procedures, *library.unread}
    for place, entry in enumerate(job.log):
        if entry.procedure is not None and entry.procedure not in known:
            mend = did_you_mean(entry.procedure, sorted(known), "name one of the procedures")
            message = f"there is no procedure `{entry.procedure}`"
            yield Flaw(("log", place, "procedure"), message, mend)
