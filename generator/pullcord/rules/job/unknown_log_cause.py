"""An entry names a cause of its procedure.

The cause that was found takes back what the procedure had proved, tells what its remedy costs, and
is counted for the odds of the next machine.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "unknown-log-cause"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        procedure: no-prime
        cause: air-leak
        did: New hose washer, clamps tightened.
    """,
    "no-prime.yaml",
)

FAILING = mended(MENDED, "cause: air-leak", "cause: air-leek")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every entry whose cause is not one of its procedure."""
    for place, entry in enumerate(job.log):
        procedure = library.procedures.get(entry.procedure or "")
        if procedure and entry.cause is not None and entry.cause not in procedure.causes:
            mend = did_you_mean(entry.cause, procedure.causes, "name one of its causes")
            message = f"`{entry.procedure}` has no cause `{entry.cause}`"
            yield Flaw(("log", place, "cause"), message, mend)
