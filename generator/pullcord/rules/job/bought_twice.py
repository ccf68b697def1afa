"""What was wanted is bought once.

A part that stands in two entries under the same name was mostly copied with the entry, and its
price counts twice. Where two were needed, the second leaves `wanted` out.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "bought-twice"

FAILING = job_example(
    """
    wanted:
      washer: {title: Hose washer, price: 1.20, serves: primes}
    log:
      - date: 2026-02-07
        parts:
          - {title: Hose washer, price: 1.10, wanted: washer}
      - date: 2026-02-14
        parts:
          - {title: Hose washer, price: 1.10, wanted: washer}
    """,
    "pump-stages.yaml",
)

_SECOND = """\
  - date: 2026-02-14
    parts:
      - {title: Hose washer, price: 1.10, wanted: washer}
"""

MENDED = mended(FAILING, _SECOND, _SECOND.replace(", wanted: washer", ""))


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every further part of the same name under `wanted`."""
    bought: dict[str, str] = {}
    for place, entry in enumerate(job.log):
        for number, part in enumerate(entry.parts):
            if part.wanted is None:
                continue
            if part.wanted in bought:
                yield Flaw(
                    ("log", place, "parts", number, "wanted"),
                    f"`{part.wanted}` was bought on {bought[part.wanted]} already",
                    "delete it, or leave `wanted` out when it is a second one",
                )
            bought.setdefault(part.wanted, entry.date[:10])
