"""A part that was wanted is named as it stands under `wanted`.

By that name the log knows that it has been bought and is no longer to be paid for. A part that was
never on the list simply leaves `wanted` out.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "unknown-wanted"

MENDED = job_example(
    """
    wanted:
      washer: {title: Hose washer, price: 1.20, serves: primes}
    log:
      - date: 2026-02-07
        parts:
          - {title: Hose washer, price: 1.10, wanted: washer}
    """,
    "pump-stages.yaml",
)

FAILING = mended(MENDED, "wanted: washer}", "wanted: wascher}")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every part whose name is not under `wanted`."""
    for place, entry in enumerate(job.log):
        for number, part in enumerate(entry.parts):
            if part.wanted is not None and part.wanted not in job.wanted:
                mend = did_you_mean(part.wanted, job.wanted, "delete `wanted` here")
                message = f"nothing called `{part.wanted}` was wanted"
                yield Flaw(("log", place, "parts", number, "wanted"), message, mend)
