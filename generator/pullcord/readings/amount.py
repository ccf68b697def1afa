"""A number with its unit."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

from pullcord.model.quantity import Quantity
from pullcord.readings.unit import ReadingError, Unit, parse_unit

NUMBER = r"[-−+]?\d+(?:\.\d+)?"
TOO_LARGE = 10**9
_AMOUNT = re.compile(rf"(?P<number>{NUMBER})\s*(?P<unit>\D.*)?", re.DOTALL)


@dataclass(frozen=True)
class Amount:
    """A measured or stated number of some unit."""

    number: Decimal
    """In the unit it was written in."""
    unit: Unit

    @property
    def base(self) -> Decimal:
        """Return it in base units."""
        return self.unit.to_base(self.number)

    def __str__(self) -> str:
        """Return it as a person writes it: `250 ohm`."""
        return amount_text(self.number, self.unit)


def parse_number(text: str) -> Decimal:
    """Read a plain decimal number; the typographic minus is one too."""
    number = Decimal(text.replace("−", "-"))
    if abs(number) >= TOO_LARGE:
        raise ReadingError(f"{text} is too large to be meant", "write it in a larger unit")
    return number


def parse_amount(text: str, quantity: Quantity | None = None) -> Amount:
    """Read `250 ohm`. With a `quantity`, refuse another one's unit; a count needs no unit."""
    match = _AMOUNT.fullmatch(text.strip())
    if match is None:
        raise ReadingError(f"`{text}` is not a number with a unit", "write it like `250 ohm`")
    written = match["unit"] or ("count" if quantity == "count" else "")
    if not written:
        raise ReadingError(f"`{text}` has no unit", "write it like `250 ohm` or `0.7 mm`")
    amount = Amount(parse_number(match["number"]), parse_unit(written))
    if quantity is not None:
        check_quantity(amount.unit, quantity, text)
    return amount


def check_quantity(unit: Unit, quantity: Quantity, text: str) -> None:
    """Raise `ReadingError` when a unit does not measure the quantity."""
    if unit.quantity != quantity:
        raise ReadingError(
            f"`{text}` is a {unit.quantity}, but a {quantity} is measured",
            f"write it in a unit of {quantity}, or put another quantity",
        )


def number_text(number: Decimal, places: int | None = None) -> str:
    """Return a number without exponent or needless zeros; `places` fixes the decimals instead."""
    if places is not None:
        return f"{number:.{places}f}"
    text = f"{number:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def amount_text(number: Decimal, unit: Unit, places: int | None = None) -> str:
    """Return a number with the name of its unit."""
    return joined(number_text(number, places), "" if unit.name == "count" else unit.name)


def joined(number: str, unit: str) -> str:
    """Return number and unit with the blank between them that the unit wants."""
    return f"{number}{unit}" if unit in {"", ":1"} else f"{number} {unit}"
