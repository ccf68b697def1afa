"""What limits mean at the meter, for them to be held against what they meant before."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pullcord.analysis.diff.change import Change, Part
from pullcord.model.machine import SheetValue
from pullcord.model.procedure import Reading, Step
from pullcord.model.quantity import Quantity
from pullcord.readings import (
    Band,
    Limits,
    Meter,
    ReadingError,
    bands_of,
    check_cover,
    for_machine,
    parse_limits,
    shares_of,
)
from pullcord.readings.sheet import value_limits

CLOSE = "too close to call"
"""Stands for the answer where the meter proves none."""

Judged = Mapping[str, tuple[Band, ...]]
"""By answer: what the display shows for it."""


def compare_readings(
    name: str, old: Step, new: Step, meters: tuple[Meter, Meter]
) -> Iterator[Change]:
    """Yield what the meter shows otherwise for the answers of a step, on machines in general."""
    sides = zip((old, new), meters, strict=True)
    yield from _compare(Part.STEPS, name, *(_of_step(step, meter) for step, meter in sides))


def compare_values(
    name: str, old: SheetValue, new: SheetValue, meters: tuple[Meter, Meter]
) -> Iterator[Change]:
    """Yield what the meter shows otherwise below, within and above a sheet's limits."""
    sides = zip((old, new), meters, strict=True)
    yield from _compare(Part.VALUES, name, *(_of_value(value, meter) for value, meter in sides))


def is_same_general(old: Reading, new: Reading) -> bool:
    """Say whether a reading's general limits hold the same values, however they are written."""
    return is_same_text(old.general, new.general, old.quantity, new.quantity)


def is_same_text(
    old: str | None, new: str | None, quantity: Quantity | None, new_quantity: Quantity | None
) -> bool:
    """Say whether two texts of limits hold the same values of the same quantity."""
    if old is None or new is None:
        return old is new
    try:
        was, now = parse_limits(old, quantity), parse_limits(new, new_quantity)
    except ReadingError:
        return old == new
    return (was.quantity, was.interval) == (now.quantity, now.interval)


def _compare(part: Part, at: str, old: Judged, new: Judged) -> Iterator[Change]:
    if not old or not new:
        return
    for answer in (*new, *(answer for answer in old if answer not in new)):
        was, now = old.get(answer, ()), new.get(answer, ())
        if [band.interval for band in was] != [band.interval for band in now]:
            yield Change(part, at, "judged", _said(was), _said(now), answer)


def _of_step(step: Step, meter: Meter) -> Judged:
    if step.reading is None:
        return {}
    return _by_answer(for_machine(step.reading, tuple(step.answers), None, meter).bands)


def _of_value(value: SheetValue, meter: Meter) -> Judged:
    limits = value_limits(value) if value.limits else None
    return _by_answer(_bands(limits, meter)) if limits else {}


def _bands(limits: Limits, meter: Meter) -> tuple[Band, ...]:
    try:
        shares = shares_of(("below", "within", "above"), limits, limits.quantity)
    except ReadingError:
        return ()
    faults = [each for each in check_cover(shares, limits.quantity) if each.kind != "never"]
    return () if faults else bands_of(shares, meter, limits.unit)


def _by_answer(bands: tuple[Band, ...]) -> Judged:
    said: dict[str, tuple[Band, ...]] = {}
    for band in bands:
        answer = CLOSE if band.is_close else band.answers[0]
        said[answer] = (*said.get(answer, ()), band)
    return said


def _said(bands: tuple[Band, ...]) -> str:
    return ", ".join(band.words for band in bands)
