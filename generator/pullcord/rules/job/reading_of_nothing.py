"""A reading says what was measured.

It belongs to a step that measures something, or to a value of the sheet. Otherwise nobody can tell
in three weeks what the number was, and it is held against no limits.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.job.given import given_of
from pullcord.analysis.job.noted import Noted
from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "reading-of-nothing"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        value: priming-time
        reading: 45 s
    """
)

FAILING = mended(MENDED, "    value: priming-time\n", "")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every reading without a step that measures and without a value."""
    for note in given_of(job, library).notes:
        if note.entry.reading is not None and note.measured is None and _is_known(note):
            where = f"step `{note.entry.step}` measures nothing" if note.step else "of what?"
            yield Flaw(
                ("log", note.place, "reading"),
                f"this reading belongs to nothing: {where}",
                "name the `value` of the sheet that was read, or the step that measures it",
            )


def _is_known(note: Noted) -> bool:
    """Say whether all that an entry names is there: what is not is a finding of its own."""
    entry = note.entry
    if entry.value is not None or (entry.procedure and note.procedure is None):
        return False
    return entry.step is None or note.step is not None
