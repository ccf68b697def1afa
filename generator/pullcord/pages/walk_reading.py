"""A reading as the walk's number pad needs it: unit keys, and what each number proves."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from pullcord.model.quantity import Quantity
from pullcord.pages.verdict import BandView, Kind, band_views
from pullcord.pages.way import Signposts, Way
from pullcord.readings import Limits, Resolved, bands_of, limits_both, shares_of
from pullcord.readings.unit import UNITS, Unit

SIGNED: tuple[Quantity, ...] = ("temperature",)
"""Quantities that go below zero; a minus before any other says that the probes are swapped."""


@dataclass(frozen=True)
class UnitKey:
    """One unit to choose, or the only one."""

    name: str
    """As it is written into the record: `kohm`."""
    key: str
    """As it stands on the key: `kΩ`."""
    factor: float
    """Base units in it; the offset is added after."""
    offset: float


@dataclass(frozen=True)
class PadBand:
    """A stretch of readings, from the end of the one before."""

    end: float | None
    """In base units; None for over-range, which is more than any number."""
    holds_end: bool
    kind: Kind
    shows: str
    """The readings in words."""
    answers: tuple[int, ...]
    """Places of the answers it proves or leaves possible, in the step's order."""


@dataclass(frozen=True)
class PadRow:
    """What holds at one temperature of the shop; there is one row where that does not matter."""

    celsius: int | None
    limits: str
    """What a good one reads; empty when nobody knows."""
    bands: tuple[PadBand, ...]


@dataclass(frozen=True)
class PadReading:
    """One step's reading."""

    quantity: Quantity
    is_signed: bool
    rows: tuple[PadRow, ...]
    """The first holds unless the shop's temperature is known."""


def pad_reading(
    posts: Signposts, resolved: Resolved, quantity: Quantity, ways: Mapping[str, Way]
) -> PadReading:
    """Return what the pad needs of a step's reading; `ways` are its answers, in order."""
    return PadReading(
        quantity=quantity,
        is_signed=quantity in SIGNED,
        rows=tuple(_rows(posts, resolved, ways)),
    )


def unit_keys(quantity: Quantity) -> tuple[UnitKey, ...]:
    """Return the units a quantity is measured in, as keys."""
    return tuple(_unit_key(unit) for unit in UNITS.values() if unit.quantity == quantity)


def _unit_key(unit: Unit) -> UnitKey:
    return UnitKey(unit.name, unit.symbol or unit.name, float(unit.factor), float(unit.offset))


def _rows(posts: Signposts, resolved: Resolved, ways: Mapping[str, Way]) -> Iterator[PadRow]:
    stated = int(resolved.at_celsius) if resolved.temperatures else None
    yield _row(posts, resolved, ways, stated)
    for row in resolved.temperatures:
        if row.celsius != resolved.at_celsius:
            yield _row(posts, _at(posts, resolved, row.limits), ways, row.celsius)


def _at(posts: Signposts, resolved: Resolved, limits: Limits) -> Resolved:
    """Return a reading at another temperature: other limits, and all that follows from them."""
    answers = tuple(share.answer for share in resolved.shares)
    shares = shares_of(answers, limits, limits.quantity)
    bands = bands_of(shares, posts.subject.meter, limits.unit) if resolved.bands else ()
    return replace(resolved, limits=limits, shares=shares, bands=bands)


def _row(
    posts: Signposts, resolved: Resolved, ways: Mapping[str, Way], celsius: int | None
) -> PadRow:
    order = {answer: place for place, answer in enumerate(ways)}
    views = band_views(posts.words, resolved, ways)
    bands = (
        _band(view, tuple(order[answer] for answer in band.answers))
        for view, band in zip(views, resolved.bands, strict=True)
    )
    return PadRow(celsius, limits_both(resolved.limits) if resolved.limits else "", tuple(bands))


def _band(view: BandView, answers: tuple[int, ...]) -> PadBand:
    return PadBand(
        end=None if view.end == "Infinity" else float(view.end),
        holds_end=view.holds_end,
        kind=view.kind,
        shows=view.shows,
        answers=answers,
    )
