"""An entry names a step of its procedure.

The step decides what was opened, fitted or closed, and where the answer leads. A step that was
renamed since the log was written must be renamed in the log too.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "unknown-log-step"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        procedure: no-prime
        step: casing
        answer: full
    """,
    "no-prime.yaml",
)

FAILING = mended(MENDED, "step: casing", "step: cassing")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every entry whose step is not one of its procedure."""
    for place, entry in enumerate(job.log):
        procedure = library.procedures.get(entry.procedure or "")
        if procedure and entry.step is not None and entry.step not in procedure.steps:
            mend = did_you_mean(entry.step, procedure.steps, "name one of its steps")
            message = f"`{entry.procedure}` has no step `{entry.step}`"
            yield Flaw(("log", place, "step"), message, mend)
