"""One value as lines: what a hand chose stays, but for lines that are too long."""

from __future__ import annotations

import re

from pullcord.source.scalar import WIDTH, fill, is_plain, may_be_folded, quoted, write_value
from pullcord.source.tidy.parts import Scalar

LONGEST = 160
"""Characters in the line of a value that is written on one: what is longer is folded."""

WIDE = 110
"""Characters in a line of a folded text that a hand has broken: a longer one has it filled anew."""

_HEADER = re.compile(r"[|>](?P<marks>[-+\d]*)")


def value_lines(scalar: Scalar, indent: int, before: int) -> list[str]:
    """Return the lines of a value.

    `indent` is that of its key or dash, `before` how many characters stand before it in its line.
    The first line goes behind the key, the others are whole lines.
    """
    raw = scalar.raw
    if raw[:1] in ("|", ">"):
        return _block_lines(scalar, indent)
    if "\n" not in raw:
        if before + len(raw) > LONGEST and may_be_folded(scalar.value):
            return [">-", *fill(scalar.value, indent + 2)]
        return [raw]
    if not may_be_folded(scalar.value):
        return write_value(scalar.value, indent, before)
    one_line = scalar.value if is_plain(scalar.value) else quoted(scalar.value)
    if before + len(one_line) <= WIDTH:
        return [one_line]
    return [">-", *fill(scalar.value, indent + 2)]


def _block_lines(scalar: Scalar, indent: int) -> list[str]:
    """Return a block of text at its new indent; folded anew only when a line is too long."""
    first, *rows = scalar.raw.split("\n")
    header = _HEADER.match(first)
    marks = header["marks"] if header else ""
    margin = _margin(scalar, rows, marks)
    lines = _moved(rows, margin, indent + _own_margin(marks))
    if "+" not in marks:
        while lines and not lines[-1]:
            lines.pop()
    else:
        lines = lines[:-1] if lines and not lines[-1] else lines
    opener = scalar.raw[:1] + marks
    is_long = scalar.raw[0] == ">" and any(len(line) > WIDE for line in lines)
    body = scalar.value.removesuffix("\n")
    if is_long and marks in ("", "-") and may_be_folded(body):
        return [opener, *fill(body, indent + 2)]
    return [opener, *lines]


def _margin(scalar: Scalar, rows: list[str], marks: str) -> int:
    """Return how many spaces the text was indented by."""
    if digits := re.sub(r"\D", "", marks):
        return scalar.column + int(digits)
    return min((len(row) - len(row.lstrip(" ")) for row in rows if row.strip(" ")), default=0)


def _own_margin(marks: str) -> int:
    return int(re.sub(r"\D", "", marks) or 2)


def _moved(rows: list[str], margin: int, new: int) -> list[str]:
    return [" " * new + row[margin:] if row.strip(" ") else "" for row in rows]
