"""An entry gives an answer that its step has.

The answer stands in the log as it stands in the procedure; `done` without a step says that the
procedure was gone through to its end. Any other words would lead nowhere: what else there is to say
goes under `note`.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.job import Entry, Job
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.procedure import Library, Step
from pullcord.rules.example_job import job_example, mended

ID = "unknown-log-answer"

MENDED = job_example(
    """
    log:
      - date: 2026-02-07
        procedure: no-prime
        step: casing
        answer: not full
        note: A cupful was in it.
    """,
    "no-prime.yaml",
)

FAILING = mended(MENDED, "answer: not full", "answer: nearly empty")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every answer that its step, or the end of its procedure, does not have."""
    for place, entry in enumerate(job.log):
        procedure = library.procedures.get(entry.procedure or "")
        if procedure is None or entry.answer is None:
            continue
        step = procedure.steps.get(entry.step) if entry.step else None
        if step is None and entry.step is not None:
            continue
        if not _is_known(entry, step):
            words = f"step `{entry.step}`" if step else f"`{entry.procedure}` without a step"
            message = f"{words} has no answer `{entry.answer}`"
            yield Flaw(("log", place, "answer"), message, _mend(entry, step))


def _is_known(entry: Entry, step: Step | None) -> bool:
    if step is None:
        return entry.answer == "done"
    ends = step.then is not None and step.then.node == "done"
    return entry.answer in step.answers or (entry.answer == "done" and ends)


def _mend(entry: Entry, step: Step | None) -> str:
    if step is None:
        return "name the step, or write `done` when the procedure was gone through to its end"
    if not step.answers:
        return "delete the answer: the step asks nothing"
    otherwise = f"its answers are {listed(step.answers)}"
    return did_you_mean(entry.answer or "", step.answers, otherwise)
