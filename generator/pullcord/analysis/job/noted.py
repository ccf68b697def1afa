"""What each entry of a log says, looked up once: its step, its answer, what was measured."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.analysis.job.measured import (
    Measured,
    Shown,
    Verdict,
    answer_proved,
    judged,
    measured_in,
    shown_in,
)
from pullcord.model.job import Entry, Job
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library, Procedure, Step
from pullcord.readings.meter import Meter

DONE = "done"
ENDS = ("cause", "procedure", DONE)


@dataclass(frozen=True)
class Noted:
    """One entry with all that follows from it alone."""

    place: int
    """Its position in the log, counted from 0."""
    entry: Entry
    procedure: Procedure | None
    """The procedure it followed, if there is such a one."""
    step: Step | None
    """The step it did, if there is such a one."""
    measured: Measured | None
    shown: Shown | None
    """What the instrument showed, if it can be read."""
    verdict: Verdict
    """What the reading proves of its limits."""
    answer: str | None
    """The step's answer: as written, or as the reading proves it."""
    at: str | None
    """The graph node it comes to in its procedure, such as `step:plug` or `done`.

    None when it follows no procedure, or when what it says settles nothing.
    """

    @property
    def day(self) -> str:
        """Return its day."""
        return self.entry.date[:10]

    @property
    def is_remedied(self) -> bool:
        """Say whether it says that the cause it names has been put right."""
        return self.entry.cause is not None and bool(self.entry.did or self.entry.parts)

    @property
    def where(self) -> str:
        """Return where in a procedure it was, in words; empty where it followed none."""
        if self.procedure is None:
            return ""
        title = f"“{self.procedure.title}”"
        return f"“{self.step.title}” of {title}" if self.step else title


def read_notes(
    job: Job, library: Library, machine: Machine | None, meter: Meter
) -> tuple[Noted, ...]:
    """Return every entry of a log with what it says, the oldest first."""
    return tuple(
        _noted(place, entry, library, machine, meter) for place, entry in enumerate(job.log)
    )


def is_end(node: str | None) -> bool:
    """Say whether a graph node ends its procedure."""
    return node is not None and node.partition(":")[0] in ENDS


def _noted(
    place: int, entry: Entry, library: Library, machine: Machine | None, meter: Meter
) -> Noted:
    procedure = library.procedures.get(entry.procedure) if entry.procedure else None
    step = procedure.steps.get(entry.step) if procedure and entry.step else None
    measured = measured_in(entry, step, machine)
    shown = shown_in(entry, measured) if measured else None
    answer = entry.answer if step and entry.answer in step.answers else None
    if answer is None and entry.answer is None and step and measured and shown:
        answer = answer_proved(step, measured, entry, shown, meter)
    return Noted(
        place=place,
        entry=entry,
        procedure=procedure,
        step=step,
        measured=measured,
        shown=shown,
        verdict=judged(measured, entry, shown, meter) if measured and shown else "not judged",
        answer=answer,
        at=_leads_to(entry, procedure, step, answer),
    )


def _leads_to(
    entry: Entry, procedure: Procedure | None, step: Step | None, answer: str | None
) -> str | None:
    """Return where an entry comes to. A cause it names is what was found in the end."""
    if procedure is None:
        return None
    if entry.cause is not None:
        return f"cause:{entry.cause}" if entry.cause in procedure.causes else None
    if step is None:
        return DONE if entry.answer == DONE and entry.step is None else None
    target = step.answers[answer] if answer is not None else step.then
    return target.node if target else None
