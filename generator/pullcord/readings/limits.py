"""Limits: what a good one reads, as an interval of one quantity."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

from pullcord.model.quantity import Quantity
from pullcord.readings.amount import (
    NUMBER,
    amount_text,
    check_quantity,
    joined,
    number_text,
    parse_amount,
    parse_number,
)
from pullcord.readings.interval import (
    ABSOLUTE_ZERO,
    ONLY_OPEN,
    OPEN,
    Cut,
    Interval,
    closed,
    interval_words,
    whole,
)
from pullcord.readings.unit import ReadingError, Unit, base_unit, parse_unit

FORMS = (
    "`200-300 ohm`, `0.7 mm ± 0.1 mm`, `250 ohm ± 10 %`, `under 1 ohm`, `up to 6 ohm`, "
    "`over 1 Mohm`, `at least 12 V` or `open`"
)
"""Every way to write limits, for the mend of those that cannot be read."""


MOST_KEPT = 2048
"""The same texts are read for many pages; so many are kept at hand."""


@dataclass(frozen=True)
class Limits:
    """An interval of a quantity, and the unit a person reads it in."""

    quantity: Quantity
    interval: Interval
    """In base units."""
    unit: Unit
    """The unit it was written in."""
    nominal: Decimal | None = None
    """The middle it was stated by, in base units."""

    def __contains__(self, value: Decimal) -> bool:
        """Say whether a value in base units is a good one."""
        return value in self.interval

    @property
    def words(self) -> str:
        """Return the limits in a sentence's words: `200 to 300 ohm`, `under 1 ohm`."""
        return self.words_in(self.unit)

    def words_in(self, unit: Unit, places: int | None = None) -> str:
        """Return the limits in words of another unit, to a number of decimals if one is given."""

        def word(base: Decimal) -> str:
            return amount_text(unit.from_base(base), unit, places)

        if self.interval.is_point and not self.interval.is_only_open:
            return word(self.interval.start.value)
        floor = whole(self.quantity).start.value
        text = interval_words(self.interval, floor, word)
        return text.replace(f" {unit.name} to ", " to ") if unit.name != "count" else text

    @property
    def short(self) -> str:
        """Return the limits as short as they can be read: `200–300 Ω`, `< 1 Ω`, `open`."""
        start, end = self.interval.start, self.interval.end
        symbol = self.unit.symbol
        if self.interval.is_only_open:
            return "open"
        if self.interval.is_point:
            return joined(self._number(start.value), symbol)
        if end.value == OPEN:
            return joined(f"{'>' if start.after else '≥'} {self._number(start.value)}", symbol)
        if start == whole(self.quantity).start:
            return joined(f"{'≤' if end.after else '<'} {self._number(end.value)}", symbol)
        return joined(f"{self._number(start.value)}–{self._number(end.value)}", symbol)

    def _number(self, base: Decimal) -> str:
        return number_text(self.unit.from_base(base))


_UNIT = r"[^\d\s±<>≤≥,+–—−-][^±<>≤≥,]*?|:1"
_OPEN = re.compile(r"o\.?l\.?|open|open circuit|over-?\s?range|infinite|∞", re.IGNORECASE)
_SPREAD = re.compile(
    rf"(?P<middle>{NUMBER})\s*(?P<unit>{_UNIT})?\s*(?:±|\+/-|\+-)\s*"
    rf"(?P<spread>\d+(?:\.\d+)?)\s*(?P<spread_unit>{_UNIT})?"
)
_RANGE = re.compile(
    rf"(?:(?P<open_low>over|above|more than)\s+|from\s+|between\s+)?"
    rf"(?P<low>{NUMBER})\s*(?P<low_unit>{_UNIT})?\s*(?:-|–|—|to|and|,(?=\s*[a-z]))\s*"
    rf"(?:(?P<open_high>under|below|less than)\s+|up to\s+)?"
    rf"(?P<high>{NUMBER})\s*(?P<unit>{_UNIT})?",
    re.IGNORECASE,
)
_UNDER = r"under|below|less than|<"
_UP_TO = r"up to|at most|no more than|not over|<=|≤|max\.?"
_OVER = r"over|above|more than|>"
_FROM = r"at least|from|no less than|not under|>=|≥|min\.?"
_ONE_SIDE = re.compile(
    rf"(?P<word>{_UP_TO}|{_FROM}|{_UNDER}|{_OVER})\s*(?P<amount>{NUMBER}.*)", re.IGNORECASE
)
_TRAILING = re.compile(
    r"(?P<amount>.+?)\s+(?:or\s+(?:(?P<more>more|over)|(?P<less>less|under)))", re.IGNORECASE
)


@lru_cache(maxsize=MOST_KEPT)
def parse_limits(text: str, quantity: Quantity | None = None) -> Limits:
    """Read limits in any of the `FORMS`; raise `ReadingError` that says what is wrong.

    With a `quantity`, limits in another one's unit are refused. `open` alone means resistance.
    """
    written = " ".join(text.split())
    if re.search(r"\d,\d", written):
        raise ReadingError(
            f"`{text}` has a comma in a number", "write `1000` for a thousand, `1.5` for 3/2"
        )
    if _OPEN.fullmatch(written):
        kind: Quantity = quantity or "resistance"
        return Limits(kind, ONLY_OPEN, base_unit(kind))
    for pattern, read in _READERS:
        if match := pattern.fullmatch(written):
            limits = read(match, text, quantity)
            _check_possible(limits, text)
            return limits
    amount = parse_amount(written, quantity) if re.match(NUMBER, written) else None
    if amount is None:
        raise ReadingError(f"`{text}` cannot be read as limits", f"write {FORMS}")
    limits = Limits(
        amount.unit.quantity, closed(amount.base, amount.base), amount.unit, amount.base
    )
    _check_possible(limits, text)
    return limits


def parse_as_written(text: str, quantity: Quantity | None) -> Limits:
    """Read limits of whatever quantity they are; a bare number counts where a count is asked.

    For checks that must tell limits that cannot be read from limits of another quantity.
    """
    if quantity == "count":
        try:
            return parse_limits(text, quantity)
        except ReadingError:
            return parse_limits(text)
    limits = parse_limits(text)
    is_open = limits.interval.is_only_open and quantity is not None
    return parse_limits(text, quantity) if is_open else limits


def _spread(match: re.Match[str], text: str, quantity: Quantity | None) -> Limits:
    spread_unit = (match["spread_unit"] or "").strip()
    unit = _unit(match["unit"] or spread_unit.replace("%", ""), text, quantity)
    middle, spread = parse_number(match["middle"]), parse_number(match["spread"])
    if spread_unit == "%" and spread > 100:
        raise ReadingError(f"`{text}` spreads over more than all of it", f"write {FORMS}")
    if spread_unit == "%" and unit.name != "%":
        half = abs(middle) * spread / 100
    else:
        written = parse_unit(spread_unit) if spread_unit else unit
        check_quantity(written, unit.quantity, text)
        half = spread * written.factor / unit.factor
    low, high = (unit.to_base(end) for end in (middle - half, middle + half))
    return Limits(unit.quantity, closed(low, high), unit, unit.to_base(middle))


def _range(match: re.Match[str], text: str, quantity: Quantity | None) -> Limits:
    unit = _unit(match["unit"] or match["low_unit"], text, quantity)
    low_unit = _unit(match["low_unit"] or match["unit"], text, quantity)
    check_quantity(low_unit, unit.quantity, text)
    low = low_unit.to_base(parse_number(match["low"]))
    high = unit.to_base(parse_number(match["high"]))
    if low > high:
        raise ReadingError(
            f"`{text}` runs backwards: {match['low']} is more than {match['high']}",
            f"write `{match['high']}-{match['low']}{' ' + unit.name if unit.name else ''}`",
        )
    interval = Interval(
        Cut(low, 1 if match["open_low"] else 0), Cut(high, 0 if match["open_high"] else 1)
    )
    if interval.is_empty:
        raise ReadingError(f"`{text}` holds nothing at all", f"write {FORMS}")
    return Limits(unit.quantity, interval, unit)


def _one_side(match: re.Match[str], text: str, quantity: Quantity | None) -> Limits:
    amount = parse_amount(match["amount"], quantity)
    word = match["word"]
    everything = whole(amount.unit.quantity)
    if re.fullmatch(f"{_UP_TO}|{_UNDER}", word, re.IGNORECASE):
        after = 1 if re.fullmatch(_UP_TO, word, re.IGNORECASE) else 0
        interval = Interval(everything.start, Cut(amount.base, after))
    else:
        after = 0 if re.fullmatch(_FROM, word, re.IGNORECASE) else 1
        interval = Interval(Cut(amount.base, after), everything.end)
    if interval.is_empty:
        raise ReadingError(f"`{text}` holds nothing at all", f"write {FORMS}")
    return Limits(amount.unit.quantity, interval, amount.unit)


def _trailing(match: re.Match[str], text: str, quantity: Quantity | None) -> Limits:
    amount = parse_amount(match["amount"], quantity)
    everything = whole(amount.unit.quantity)
    start, end = (everything.start, Cut(amount.base, 1))
    if match["more"]:
        start, end = Cut(amount.base, 0), everything.end
    return Limits(amount.unit.quantity, Interval(start, end), amount.unit)


_READERS = (
    (_SPREAD, _spread),
    (_RANGE, _range),
    (_ONE_SIDE, _one_side),
    (_TRAILING, _trailing),
)


def _unit(written: str | None, text: str, quantity: Quantity | None) -> Unit:
    if not written:
        if quantity == "count":
            return parse_unit("count")
        raise ReadingError(f"`{text}` has no unit", f"write {FORMS}")
    unit = parse_unit(written)
    if quantity is not None:
        check_quantity(unit, quantity, text)
    return unit


def _check_possible(limits: Limits, text: str) -> None:
    low = limits.interval.start.value
    if low < whole(limits.quantity).start.value:
        least = "absolute zero" if limits.quantity == "temperature" else "zero"
        floor = ABSOLUTE_ZERO if limits.quantity == "temperature" else Decimal(0)
        raise ReadingError(
            f"`{text}` goes below {least}, which no {limits.quantity} can",
            f"start at {amount_text(floor, base_unit(limits.quantity))} or above",
        )
