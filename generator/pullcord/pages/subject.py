"""What a page speaks of: machines in general, or one machine with its sheet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from pullcord.model.machine import Machine
from pullcord.model.procedure import Reading, Step
from pullcord.readings import ConnectorView, Meter, Resolved, connector_views, for_machine


@dataclass(frozen=True)
class Subject:
    """What every reading of a page is held against. Made once a machine."""

    meter: Meter
    """The shop's."""
    machine: Machine | None = None
    """None on the general page."""
    digest: str = ""
    """The revision of the machine's sheet."""
    plugs: Mapping[str, ConnectorView] = field(default_factory=dict)
    """The machine's connectors, by name."""

    @property
    def name(self) -> str:
        """Return the machine's name; empty for machines in general."""
        return self.machine.machine if self.machine else ""

    @property
    def title(self) -> str:
        """Return what the shed calls the machine; empty for machines in general."""
        return self.machine.title if self.machine else ""

    def resolve(self, step: Step, reading: Reading) -> Resolved:
        """Return what a step's reading should show."""
        return for_machine(reading, tuple(step.answers), self.machine, self.meter)


def subject_of(machine: Machine, digest: str, meter: Meter) -> Subject:
    """Return a machine as a subject."""
    plugs = {view.name: view for view in connector_views(machine, meter)}
    return Subject(meter, machine, digest, plugs)
