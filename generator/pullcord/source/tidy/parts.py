"""A text as entries: keys with their values and items of lists, each knowing where it stands."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from pullcord.source.compose import Span, Spot


@dataclass(frozen=True)
class Scalar:
    """One text."""

    raw: str
    """As it is written, with its quotes or its `|` or `>`."""
    value: str
    column: int
    """Where its line's key or dash stands, counted from 0."""


@dataclass(frozen=True)
class Flow:
    """A list or keys between brackets."""

    raw: str
    node: Block
    """The same as entries."""
    has_comments: bool


@dataclass(frozen=True)
class Block:
    """A list or keys; empty only between brackets."""

    entries: list[Entry]
    is_list: bool


Node = Scalar | Flow | Block


@dataclass
class Entry:
    """A key with its value, or an item of a list, and the comments that go with it."""

    start: int
    """The character its key or dash stands at."""
    column: int
    name: str | int
    """The key as data, or the item's position."""
    raw: str
    """The key as it is written; nothing for an item."""
    node: Node
    above: list[str] = field(default_factory=list)
    """Comments on lines of their own, and "" for a blank line."""
    beside: list[str] = field(default_factory=list)
    """Comments behind it; all but the first come to stand above."""
    below: list[str] = field(default_factory=list)
    """Comments that end its block."""


@dataclass(frozen=True)
class Reader:
    """A text that is being taken apart."""

    text: str
    spans: Sequence[Span]
    comments: Sequence[int]
    """Where each `#` stands, in order."""

    def node(self, spot: Spot, data: Any, column: int) -> Node:
        """Return what stands at a spot; `column` is that of the entry it belongs to."""
        _, start, end, below = spot
        if below is None:
            return Scalar(self.text[start:end], data, column)
        block = Block(list(self._entries(below, data, start)), isinstance(below, list))
        if self.text[start : start + 1] not in ("[", "{"):
            return block
        has_comments = bisect_left(self.comments, end) > bisect_left(self.comments, start)
        return Flow(self.text[start:end], block, has_comments)

    def _entries(self, below: Any, data: Any, start: int) -> Iterator[Entry]:
        if isinstance(below, list):
            dash = self._column(start)
            for position, spot in enumerate(below):
                at = self._dash(spot[1], dash)
                node = self.node(spot, data[position], dash)
                yield Entry(at, dash, position, "", node)
            return
        for name, spot in below.items():
            column = self._column(spot[0])
            node = self.node(spot, data[name], column)
            yield Entry(spot[0], column, name, self._key(spot[0]), node)

    def _column(self, index: int) -> int:
        return index - (self.text.rfind("\n", 0, index) + 1)

    def _key(self, start: int) -> str:
        at = bisect_left(self.spans, (start, start))
        return self.text[slice(*self.spans[at])]

    def _dash(self, start: int, column: int) -> int:
        """Return where an item's dash stands: on its line, or above when that is empty."""
        line_start = self.text.rfind("\n", 0, start) + 1
        while line_start > 0 and not self._has_dash(line_start, column):
            line_start = self.text.rfind("\n", 0, line_start - 1) + 1
        return line_start + column

    def _has_dash(self, line_start: int, column: int) -> bool:
        line = self.text[line_start : line_start + column + 1]
        return line[column : column + 1] == "-" and "#" not in line


def block_entries(node: Node) -> Iterator[Entry]:
    """Yield every entry that is not between brackets, in the order of the text."""
    if isinstance(node, Block):
        for entry in node.entries:
            yield entry
            yield from block_entries(entry.node)
