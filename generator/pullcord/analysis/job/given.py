"""A job with everything that must be known to read its log."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.analysis.job.left_out import stages_without
from pullcord.analysis.job.noted import Noted, read_notes
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.model.procedure import Library
from pullcord.readings.meter import Meter, meter_faults, parse_meter


@dataclass(frozen=True)
class Given:
    """A job and what it is read with. Names it uses need not exist: the rules report those."""

    job: Job
    library: Library
    machine: Machine | None
    """None when there is no sheet of that name."""
    meter: Meter
    notes: tuple[Noted, ...]
    """Every entry with what it says, the oldest first."""


def given_of(job: Job, library: Library) -> Given:
    """Return a job with its machine's sheet, the shop's meter and what its entries say.

    A meter that cannot be used is a finding of the settings; a cheap one stands in for it here.
    """
    stages = stages_without(library.stages, job.leaves_out)
    library = library.model_copy(update={"stages": stages})
    sheet = MeterSheet() if any(meter_faults(library.meter)) else library.meter
    meter, machine = parse_meter(sheet), library.machines.get(job.machine)
    return Given(job, library, machine, meter, read_notes(job, library, machine, meter))
