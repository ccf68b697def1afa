"""A list item of plain data as YAML text."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from pullcord.source.scalar import WIDTH, write_scalar, write_value

_NUMBER = re.compile(r"\d{4}-\d\d-\d\d( \d\d:\d\d)?|-?\d+(\.\d+)?")


@dataclass(frozen=True)
class Figure:
    """A number or a day, as it was typed: it is written without quotes."""

    text: str


Value = str | Figure | Sequence["Value"] | Mapping[str, "Value"]
Data = Mapping[str, Value]


def block_item(data: Data, column: int) -> Iterator[str]:
    """Yield the lines of an item whose dash stands at a column, counted from 0."""
    dash = f"{' ' * column}- "
    for line in _rows(data, column + 2):
        yield dash + line[column + 2 :]
        dash = " " * (column + 2)


def flow_item(data: Value) -> str:
    """Return an item on one line, as it stands between brackets."""
    if isinstance(data, Mapping):
        return "{" + ", ".join(f"{key}: {flow_item(part)}" for key, part in data.items()) + "}"
    if isinstance(data, Figure):
        return data.text if _NUMBER.fullmatch(data.text) else write_scalar(data.text)
    if isinstance(data, str):
        return write_scalar(data)
    return "[" + ", ".join(map(flow_item, data)) + "]"


def _rows(data: Data, indent: int) -> Iterator[str]:
    margin = " " * indent
    for key, value in data.items():
        if isinstance(value, str):
            first, *more = write_value(value, indent, indent + len(key) + 2)
            yield f"{margin}{key}: {first}"
            yield from more
        elif parts := _mappings(value):
            yield f"{margin}{key}:"
            for part in parts:
                yield from _part(part, indent + 2)
        else:
            yield f"{margin}{key}: {flow_item(value)}"


def _mappings(value: Value) -> Sequence[Data]:
    """Return the things of a list of mappings; nothing for any other value."""
    things = () if isinstance(value, str | Figure | Mapping) else value
    return [thing for thing in things if isinstance(thing, Mapping)]


def _part(part: Data, column: int) -> Iterator[str]:
    """Yield one thing of a list: on one line if it fits."""
    line = f"{' ' * column}- {flow_item(part)}"
    if len(line) > WIDTH:
        yield from block_item(part, column)
    else:
        yield line
