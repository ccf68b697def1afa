"""Entries as lines, in their order, at their indent."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import takewhile

from pullcord.finding import Place
from pullcord.source.scalar import WIDTH, write_scalar
from pullcord.source.tidy.parts import Block, Entry, Flow, Node, Scalar
from pullcord.source.tidy.texts import value_lines

Order = Callable[[Place, Sequence[str]], Sequence[str]]
"""Given a place and its keys, returns them in their order."""


BLANK = "\0"
"""Stands for a blank line that is no part of any value."""


@dataclass(frozen=True)
class Writer:
    """Writes with one order of keys."""

    order: Order

    def block(self, block: Block, place: Place, indent: int) -> Iterator[str]:
        """Yield the lines of entries whose keys or dashes stand at an indent."""
        is_open = False
        for entry in self._in_order(block, place):
            blanks = len(list(takewhile(lambda line: not line, entry.above))) if is_open else 0
            above = entry.above[blanks:]
            yield from self._entry(replace(entry, above=above), (*place, entry.name), indent)
            is_open = not entry.below and self.is_open(entry.node, (*place, entry.name))

    def is_open(self, node: Node, place: Place) -> bool:
        """Whether a blank line behind a value would become part of it."""
        if isinstance(node, Block):
            last = self._in_order(node, place)[-1]
            return not last.below and self.is_open(last.node, (*place, last.name))
        return isinstance(node, Scalar) and re.match(r"[|>][-\d]*\+", node.raw) is not None

    def _in_order(self, block: Block, place: Place) -> list[Entry]:
        if block.is_list:
            return block.entries
        by_name = {str(entry.name): entry for entry in block.entries}
        return [by_name[name] for name in self.order(place, list(by_name))]

    def _entry(self, entry: Entry, place: Place, indent: int) -> Iterator[str]:
        margin = " " * indent
        lead = f"{margin}{_key(entry)}" if entry.raw else f"{margin}-"
        first, *rest = self._value(entry.node, place, indent, len(lead) + 1, entry.raw == "")
        beside, others = _beside(entry)
        for comment in (*entry.above, *others):
            yield f"{margin}{comment}" if comment else BLANK
        line = f"{lead} {first}" if first else lead
        yield f"{line}  {beside}" if beside else line
        yield from rest
        yield from (f"{margin}{comment}" for comment in entry.below)

    def _value(
        self, node: Node, place: Place, indent: int, before: int, is_item: bool
    ) -> list[str]:
        """Return what stands behind a key or a dash, and the whole lines that follow."""
        if isinstance(node, Scalar):
            return value_lines(node, indent, before)
        if isinstance(node, Flow):
            line = node.raw if node.has_comments else self._flow(node, place)
            if node.has_comments or before + len(line) <= WIDTH or not node.node.entries:
                return line.split("\n")
            node = node.node
        lines = list(self.block(node, place, indent + 2))
        if not is_item:
            return ["", *lines]
        while lines[0] == BLANK:
            del lines[0]
        first = lines[0][indent + 2 :]
        # A comment cannot stand behind the dash: it would be another's.
        return ["", *lines] if first.startswith("#") else [first, *lines[1:]]

    def _flow(self, node: Node, place: Place) -> str:
        if isinstance(node, Scalar):
            return write_scalar(node.value) if "\n" in node.raw else node.raw
        if isinstance(node, Flow):
            node = node.node
        entries = self._in_order(node, place)
        parts = [self._flow(entry.node, (*place, entry.name)) for entry in entries]
        if node.is_list:
            return f"[{', '.join(parts)}]"
        pairs = zip(entries, parts, strict=True)
        return "{" + ", ".join(f"{_key(entry)} {part}" for entry, part in pairs) + "}"


def _key(entry: Entry) -> str:
    raw = write_scalar(str(entry.name)) if "\n" in entry.raw else entry.raw
    return f"{raw}:"


def _beside(entry: Entry) -> tuple[str, list[str]]:
    """Return the comment that stands behind an entry, and those that do not.

    Behind the dash of an item made of keys it would be the first key's, and behind brackets with
    comments in them there may be one already.
    """
    node = entry.node
    is_item_of_keys = isinstance(node, Block) and not entry.raw
    if not entry.beside or is_item_of_keys or (isinstance(node, Flow) and node.has_comments):
        return "", entry.beside
    return entry.beside[0], entry.beside[1:]
