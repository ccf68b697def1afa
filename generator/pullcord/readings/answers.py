"""The answers of a reading: together they must hold every value an instrument can show, once.

An answer is `below`, `within`, `above` or `open` (over-range), said of the limits, or limits of its
own such as `1-3 ohm`. Where there is an `open` answer, `above` and `over 3 ohm` stop short of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

from pullcord.model.quantity import Quantity
from pullcord.readings.interval import ONLY_OPEN, OPEN, Cut, Interval, whole
from pullcord.readings.limits import Limits, parse_limits
from pullcord.readings.unit import ReadingError, Unit, base_unit

WORDS = ("below", "within", "above", "open")
"""The answers that speak of the limits."""


@dataclass(frozen=True)
class Share:
    """One answer and the readings it stands for."""

    answer: str
    interval: Interval
    """In base units."""


@dataclass(frozen=True)
class CoverFault:
    """Readings that no answer holds, or two, or an answer that no reading can give."""

    kind: Literal["gap", "overlap", "never"]
    interval: Interval
    """The readings in question, in base units; empty for `never`."""
    answers: tuple[str, ...]
    """The answers in question; none for a gap."""


def is_said_of_limits(answers: Iterable[str]) -> bool:
    """Say whether any answer needs limits to be understood: `below`, `within`, `above`."""
    return any(answer in WORDS[:3] for answer in answers)


def share_of(
    answer: str, answers: Sequence[str], limits: Limits | None, quantity: Quantity
) -> Share:
    """Return the readings one answer stands for beside the others; raise `ReadingError`."""
    if answer in WORDS[:3]:
        if limits is None:
            raise ReadingError(
                f"answer `{answer}` is said of limits, and there are none",
                "give the reading `limits` or `general`",
            )
        interval = _said_of(answer, limits)
    else:
        interval = _own(answer, quantity)
    if OPEN in interval and not interval.is_only_open and _has_open(answers):
        interval = Interval(interval.start, Cut(OPEN, 0))
    return Share(answer, interval)


def shares_of(
    answers: Sequence[str], limits: Limits | None, quantity: Quantity
) -> tuple[Share, ...]:
    """Return what each answer stands for, lowest readings first; raise `ReadingError`."""
    shares = [share_of(answer, answers, limits, quantity) for answer in answers]
    return tuple(sorted(shares, key=lambda share: (share.interval.start, share.interval.end)))


def check_cover(shares: Sequence[Share], quantity: Quantity) -> Iterator[CoverFault]:
    """Yield every gap, overlap and answer that can never be given, lowest first."""
    for share in shares:
        if share.interval.is_empty:
            yield CoverFault("never", share.interval, (share.answer,))
    real = sorted(
        (share for share in shares if not share.interval.is_empty),
        key=lambda share: (share.interval.start, share.interval.end),
    )
    for one, other in combinations(real, 2):
        both = one.interval.overlap(other.interval)
        if not both.is_empty:
            yield CoverFault("overlap", both, (one.answer, other.answer))
    yield from (CoverFault("gap", gap, ()) for gap in _gaps(real, quantity))


def fault_words(fault: CoverFault, unit: Unit) -> str:
    """Return what is wrong, naming the readings in a unit the author uses."""
    words = Limits(unit.quantity, fault.interval, unit).words
    is_number = fault.interval.is_point and not fault.interval.is_only_open
    readings = f"exactly {words}" if is_number else words
    named = " and ".join(f"`{answer}`" for answer in fault.answers)
    if fault.kind == "gap":
        return f"no answer for a reading of {readings}"
    if fault.kind == "overlap":
        return f"answers {named} both stand for a reading of {readings}"
    return f"answer {named} can never be given: no reading is left for it"


def _said_of(answer: str, limits: Limits) -> Interval:
    everything = whole(limits.quantity)
    if answer == "below":
        return Interval(everything.start, limits.interval.start)
    if answer == "above":
        return Interval(limits.interval.end, everything.end)
    return limits.interval


def _own(answer: str, quantity: Quantity) -> Interval:
    try:
        return parse_limits(answer, quantity).interval
    except ReadingError as error:
        words = ", ".join(f"`{word}`" for word in WORDS)
        raise ReadingError(
            f"answer `{answer}` says no reading: {error}",
            f"use {words}, or limits such as `1-3 {base_unit(quantity).name}`",
        ) from None


def _has_open(answers: Iterable[str]) -> bool:
    return any(_is_open(answer) for answer in answers)


def _is_open(answer: str) -> bool:
    if answer in WORDS:
        return answer == "open"
    try:
        return parse_limits(answer).interval == ONLY_OPEN
    except ReadingError:
        return False


def _gaps(shares: Sequence[Share], quantity: Quantity) -> Iterator[Interval]:
    reached, end = whole(quantity).start, whole(quantity).end
    for share in shares:
        if share.interval.start > reached:
            yield Interval(reached, share.interval.start)
        reached = max(reached, share.interval.end)
    if reached < end:
        yield Interval(reached, end)
