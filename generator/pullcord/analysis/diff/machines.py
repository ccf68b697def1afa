"""What changed about a machine sheet: its figures, as the meter would judge them, and its plugs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pullcord.analysis.diff.change import Change, Part
from pullcord.analysis.diff.fields import compare_fields
from pullcord.analysis.diff.judged import compare_values, is_same_text
from pullcord.model.base import Record
from pullcord.model.machine import Machine, Pin, SheetValue
from pullcord.readings import Meter

_LOOKED_AT = ("values", "connectors")


def compare_machines(old: Machine, new: Machine, meters: tuple[Meter, Meter]) -> Iterator[Change]:
    """Yield every change between two states of a sheet."""
    yield from compare_fields(Part.WHOLE, "", old, new, but=_LOOKED_AT)
    yield from _compare_each(Part.VALUES, old.values, new.values)
    for name, value in new.values.items():
        if name in old.values:
            yield from compare_values(name, old.values[name], value, meters)
    plugs = (
        {name: each.model_copy(update={"pins": {}}) for name, each in machine.connectors.items()}
        for machine in (old, new)
    )
    yield from _compare_each(Part.PLUGS, *plugs)
    yield from _compare_each(Part.PLUGS, _pins(old), _pins(new))


def _compare_each(
    part: Part, old: Mapping[str, Record], new: Mapping[str, Record]
) -> Iterator[Change]:
    for name in old:
        if name not in new:
            yield Change(part, name, "removed", _title(name, old[name]), "")
    for name, record in new.items():
        if name not in old:
            yield Change(part, name, "added", "", _title(name, record))
        else:
            but = _written_otherwise(old[name], record)
            yield from compare_fields(part, name, old[name], record, but)


def _written_otherwise(old: Record, new: Record) -> tuple[str, ...]:
    """Return the fields whose limits hold the same values, however they are written."""
    if not isinstance(old, SheetValue) or not isinstance(new, SheetValue):
        return ()
    is_same = is_same_text(old.limits, new.limits, old.quantity, new.quantity)
    return ("limits",) if is_same else ()


def _title(name: str, record: Record) -> str:
    said = getattr(record, "title", None) or getattr(record, "function", None)
    figure = getattr(record, "limits", None) or getattr(record, "value", None)
    return " ".join(part for part in (said or name, figure) if part)


def _pins(machine: Machine) -> dict[str, Pin]:
    return {
        f"{plug}.{name}": pin
        for plug, connector in machine.connectors.items()
        for name, pin in connector.pins.items()
    }
