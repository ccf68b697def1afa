"""Where a pin sits in its connector, counted from the top left as drawn."""

from __future__ import annotations

import re
from string import ascii_lowercase
from typing import NamedTuple

_LETTERED = re.compile(r"(?P<row>[a-z])\s*(?P<column>\d{1,2})", re.IGNORECASE)
_COUNTED = re.compile(r"(?P<row>\d{1,2})\s*,\s*(?P<column>\d{1,2})")


class Spot(NamedTuple):
    """Row and column, both from 1; ordered as one reads."""

    row: int
    column: int

    @property
    def label(self) -> str:
        """Return it as the chart prints it: `a1` is the first place of the top row."""
        return f"{ascii_lowercase[self.row - 1]}{self.column}"


def parse_spot(text: str) -> Spot | None:
    """Read `a1` or `1,1`; None for anything else."""
    written = text.strip()
    if match := _LETTERED.fullmatch(written):
        return Spot(ascii_lowercase.index(match["row"].lower()) + 1, int(match["column"]))
    if match := _COUNTED.fullmatch(written):
        row = int(match["row"])
        return Spot(row, int(match["column"])) if row <= len(ascii_lowercase) else None
    return None


def is_inside(spot: Spot, rows: int, columns: int) -> bool:
    """Say whether a connector of so many rows and columns has the place."""
    return 1 <= spot.row <= rows and 1 <= spot.column <= columns
