"""Answer and reading of an entry say the same.

With this machine's limits, the shop's meter and the warmth of the evening the reading proves one
answer, and the entry gives another. One of them is mostly a slip of the finger; the answer is what
counts.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.job.given import Given, given_of
from pullcord.analysis.job.measured import answer_proved
from pullcord.analysis.job.noted import Noted
from pullcord.finding import Flaw
from pullcord.model.job import Job
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "answer-against-reading"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        procedure: no-prime
        step: time-it
        answer: above
        reading: 95 s
    """,
    "no-prime.yaml",
)

FAILING = mended(MENDED, "answer: above", "answer: within")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every answer that its own reading disproves."""
    given = given_of(job, library)
    for note in given.notes:
        proved = _proved(given, note)
        if proved is not None and note.answer is not None and proved != note.answer:
            message = f"{note.entry.reading} is `{proved}` on this machine, not `{note.answer}`"
            mend = "look into the step again, and mend the one that is wrong"
            yield Flaw(("log", note.place, "answer"), message, mend)


def _proved(given: Given, note: Noted) -> str | None:
    if note.step is None or note.measured is None or note.shown is None:
        return None
    return answer_proved(note.step, note.measured, note.entry, note.shown, given.meter)
