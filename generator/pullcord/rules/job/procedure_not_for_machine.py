"""The procedures of a log fit its machine.

A procedure for another kind of machine has other limits and other dangers. Where it does fit, its
`fits` is too narrow or the sheet says something wrong.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.readings.fits import is_fitting
from pullcord.rules.example_job import PROCEDURE, job_example

ID = "procedure-not-for-machine"
# The dangers of another kind of machine are not those the page warns of.
IS_SAFETY = True

_JOB = job_example(
    """
    log:
      - date: 2026-02-07
        procedure: no-prime
        answer: done
    """
)

FAILING = {**_JOB, "no-prime.yaml": PROCEDURE + "fits: {kind: generator}\n"}

MENDED = {**_JOB, "no-prime.yaml": PROCEDURE + "fits: {kind: pump}\n"}


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every procedure that does not fit, at the first entry that names it."""
    machine = library.machines.get(job.machine)
    told: set[str] = set()
    for place, entry in enumerate(job.log):
        procedure = library.procedures.get(entry.procedure or "")
        if machine is None or procedure is None or procedure.procedure in told:
            continue
        told.add(procedure.procedure)
        if not is_fitting(procedure, machine):
            message = f"`{procedure.procedure}` is not for a machine such as `{job.machine}`"
            mend = "see whether the right procedure is named; else mend its `fits`, or the sheet"
            yield Flaw(("log", place, "procedure"), message, mend)
