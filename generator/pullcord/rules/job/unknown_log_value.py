"""An entry names a value of the machine's sheet.

A reading taken outside of any procedure is held against the value's limits, and drawn beside the
earlier ones. A new value is first written into the sheet, with or without its limits.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "unknown-log-value"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        value: priming-time
        reading: 45 s
    """
)

FAILING = mended(MENDED, "value: priming-time", "value: prime-time")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every value that the sheet does not have."""
    machine = library.machines.get(job.machine)
    for place, entry in enumerate(job.log):
        if machine and entry.value is not None and entry.value not in machine.values:
            message = f"the sheet of `{job.machine}` has no value `{entry.value}`"
            mend = did_you_mean(entry.value, machine.values, "write it into the sheet first")
            yield Flaw(("log", place, "value"), message, mend)
