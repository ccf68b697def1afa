"""The readings a procedure asks for, and every set of limits they may be held against."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING

from pullcord.model.quantity import Quantity
from pullcord.readings.answers import CoverFault, Share, check_cover, is_said_of_limits, shares_of
from pullcord.readings.fits import is_fitting
from pullcord.readings.limits import MOST_KEPT, Limits, parse_limits
from pullcord.readings.sheet import value_text
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

    @cached_property
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
    return _limits(reading.general, reading.quantity)


def held_against(asked: Asked, procedure: Procedure, library: Library | None) -> Iterator[Held]:
    """Yield what the answers stand for: by the procedure's own limits, then machine by machine.

    Nothing comes of answers or limits that cannot be read: those are findings of their own.
    """
    answers, reading = asked.answers, asked.reading
    yield from _held(answers, reading.quantity, "", reading.general)
    if not reading.limits or not is_said_of_limits(answers):
        return
    for machine in fitting_machines(procedure, library):
        text = value_text(machine.values.get(reading.limits))
        if text:
            yield from _held(answers, reading.quantity, machine.machine, text)


@lru_cache(maxsize=MOST_KEPT)  # The same answers and limits come back in many procedures.
def _held(
    answers: tuple[str, ...], quantity: Quantity, machine: str, text: str | None
) -> tuple[Held, ...]:
    """Return what answers stand for beside limits in words: one, or none of what is unreadable."""
    limits = _limits(text, quantity)
    if not answers or (limits is None and (machine or is_said_of_limits(answers))):
        return ()
    try:
        shares = shares_of(answers, limits, quantity)
    except ReadingError:
        return ()
    return (Held(machine, limits, shares, limits.unit if limits else _unit_of(answers, quantity)),)


def _limits(text: str | None, quantity: Quantity) -> Limits | None:
    try:
        return parse_limits(text, quantity) if text else None
    except ReadingError:
        return None


def _unit_of(answers: tuple[str, ...], quantity: Quantity) -> Unit:
    units = (parse_limits(answer, quantity).unit for answer in answers)
    return next(units, base_unit(quantity))
