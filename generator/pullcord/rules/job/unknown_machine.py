"""A job is about a machine that has a sheet.

The sheet gives the limits every reading of the log is held against, and tells which procedures fit.
A sheet with errors of its own cannot be read and does not count: mend it first.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "unknown-machine"

MENDED = job_example("")

FAILING = mended(MENDED, "machine: old-pump", "machine: old-pumpp")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw when the machine has no sheet that could be read."""
    if job.machine not in library.machines:
        mend = did_you_mean(job.machine, library.machines, "write its sheet, or take an empty one")
        yield Flaw(("machine",), f"there is no machine sheet `{job.machine}`", mend)
