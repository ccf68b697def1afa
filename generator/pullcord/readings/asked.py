"""The readings a procedure asks for, and every set of limits they may be held against."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pullcord.readings.answers import CoverFault, Share, check_cover, is_said_of_limits, shares_of
from pullcord.readings.fits import is_fitting
from pullcord.readings.limits import Limits, parse_limits
from pullcord.readings.sheet import value_limits
from pullcord.readings.unit import ReadingError, Unit, base_unit

if TYPE_CHECKING:
    from pullcord.model.machine import Machine
    from pullcord.model.procedure import Library, Procedure, Reading, Step


@dataclass(frozen=True)
class Asked:
    """One reading with the step that asks for it."""

    name: str
    """The step's name."""
    step: Step
    reading: Reading

    @property
    def answers(self) -> tuple[str, ...]:
        """Return the answers, in the author's order."""
        return tuple(self.step.answers)

    @property
    def needs_limits(self) -> bool:
        """Say whether its answers mean nothing without limits."""
        return is_said_of_limits(self.answers)


@dataclass(frozen=True)
class Held:
    """What the answers stand for under one set of limits."""

    machine: str
    """The machine whose sheet gives the limits; "" for the procedure's own."""
    limits: Limits | None
    """None when the answers are limits themselves."""
    shares: tuple[Share, ...]
    unit: Unit
    """The unit to speak of readings in."""

    @property
    def faults(self) -> tuple[CoverFault, ...]:
        """Return every gap, overlap and impossible answer."""
        return tuple(check_cover(self.shares, self.unit.quantity))

    @property
    def where(self) -> str:
        """Return the limits in words, for the end of a message; "" for the procedure's own."""
        words = self.limits.words if self.limits else ""
        return f" on `{self.machine}`, whose sheet says {words}" if self.machine else ""


def asked_of(procedure: Procedure) -> Iterator[Asked]:
    """Yield every reading, in the file's order."""
    for name, step in procedure.steps.items():
        if step.reading is not None:
            yield Asked(name, step, step.reading)


def fitting_machines(procedure: Procedure, library: Library | None) -> Iterator[Machine]:
    """Yield the machines of the library that a procedure applies to."""
    machines = library.machines.values() if library else ()
    return (machine for machine in machines if is_fitting(procedure, machine))


def general_limits(reading: Reading) -> Limits | None:
    """Return the general limits, or None when there are none that can be read."""
    try:
        return parse_limits(reading.general, reading.quantity) if reading.general else None
    except ReadingError:
        return None


def held_against(asked: Asked, procedure: Procedure, library: Library | None) -> Iterator[Held]:
    """Yield what the answers stand for: by the procedure's own limits, then machine by machine.

    Nothing comes of answers or limits that cannot be read: those are findings of their own.
    """
    general = general_limits(asked.reading)
    if asked.answers and (general or not asked.needs_limits):
        yield from _held(asked, "", general)
    if not asked.answers or not asked.needs_limits or not asked.reading.limits:
        return
    for machine in fitting_machines(procedure, library):
        value = machine.values.get(asked.reading.limits)
        if limits := value_limits(value, asked.reading.quantity):
            yield from _held(asked, machine.machine, limits)


def _held(asked: Asked, machine: str, limits: Limits | None) -> Iterator[Held]:
    quantity = asked.reading.quantity
    try:
        shares = shares_of(asked.answers, limits, quantity)
    except ReadingError:
        return
    yield Held(machine, limits, shares, limits.unit if limits else _unit_of(asked))


def _unit_of(asked: Asked) -> Unit:
    units = (parse_limits(answer, asked.reading.quantity).unit for answer in asked.answers)
    return next(units, base_unit(asked.reading.quantity))
