"""An entry that names a step, a cause or an answer names its procedure too.

Several procedures may have a step of the same name, and only the procedure tells what it does.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "step-without-procedure"

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

FAILING = mended(MENDED, "    procedure: no-prime\n", "")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every step, cause or answer of no procedure; one an entry."""
    for place, entry in enumerate(job.log):
        named = {"step": entry.step, "cause": entry.cause, "answer": entry.answer}
        key = next((key for key, value in named.items() if value is not None), None)
        if entry.procedure is None and key is not None:
            had = [name for name, each in library.procedures.items() if entry.step in each.steps]
            mend = f"add `procedure: {had[0]}`" if len(had) == 1 else "add `procedure:`"
            message = f"this {key} belongs to no procedure"
            yield Flaw(("log", place, key), message, f"{mend} above it")
