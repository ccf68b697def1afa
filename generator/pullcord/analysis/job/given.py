"""A job with everything that must be known to read its log."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from pullcord.model.job import Entry, Job
from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.model.procedure import Library, Procedure, Step
from pullcord.readings.meter import Meter, meter_faults, parse_meter


@dataclass(frozen=True)
class Given:
    """A job and what it is read with. Names it uses need not exist: the rules report those."""

    job: Job
    library: Library
    machine: Machine | None
    """None when there is no sheet of that name."""
    meter: Meter

    def entries(self) -> Iterator[tuple[int, Entry]]:
        """Yield every entry with its position in the log, the oldest first."""
        return enumerate(self.job.log)

    def procedure_of(self, entry: Entry) -> Procedure | None:
        """Return the procedure an entry followed, if there is such a one."""
        return self.library.procedures.get(entry.procedure) if entry.procedure else None

    def step_of(self, entry: Entry) -> Step | None:
        """Return the step an entry did, if there is such a one."""
        procedure = self.procedure_of(entry)
        return procedure.steps.get(entry.step) if procedure and entry.step else None


def given_of(job: Job, library: Library) -> Given:
    """Return a job with its machine's sheet and the shop's meter.

    A meter that cannot be used is a finding of the settings; a cheap one stands in for it here.
    """
    sheet = MeterSheet() if any(meter_faults(library.meter)) else library.meter
    return Given(job, library, library.machines.get(job.machine), parse_meter(sheet))
