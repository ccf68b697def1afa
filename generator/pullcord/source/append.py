"""New items in a list of a YAML file, so that every byte a hand has written stays.

Comments, quotes, blank lines, line ends and the order of everything are left alone: lines are put
between lines. Only an empty `[]` makes way for a list with one `- ` a line, and a list written
between brackets gets its new items between them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pullcord.errors import PullcordError
from pullcord.source.compose import Spot, compose
from pullcord.source.decode import read_text
from pullcord.source.ends import end_of
from pullcord.source.item import Data, block_item, flow_item
from pullcord.source.lines import Lines, split_lines


@dataclass(frozen=True)
class NewItem:
    """One item, and where it goes."""

    before: int
    """How many of the items that were there stand before it."""
    data: Data


class NoPlaceError(PullcordError):
    """The file is written in a way that leaves no place for new items."""


@dataclass(frozen=True)
class _Text:
    """The text in which places are counted, and the lines that are changed."""

    text: str
    lines: Lines

    def line_of(self, index: int) -> int:
        return self.text.count("\n", 0, index)

    def column_of(self, index: int) -> int:
        return index - (self.text.rfind("\n", 0, index) + 1)


def add_items(raw: bytes, key: str, items: Sequence[NewItem]) -> bytes:
    """Return a file's bytes with new items in the list behind one of its first-level keys.

    Items with the same place keep their order. The key is added when the file has none. Nothing
    is promised about the result when the file cannot be read: read it before, and once more after.
    Raises NoPlaceError with how to mend it.
    """
    text, _ = read_text(raw)
    here = _Text(text, split_lines(raw))
    root = compose(text).root
    if root is None or not isinstance(root[3], dict) or text[root[1]] == "{":
        raise NoPlaceError(
            "the file is not made of `key: value` lines: write one key a line, without `{` and `}`"
        )
    spot = root[3].get(key)
    if spot is None:
        return _begin_list(here, root, key, items).raw
    if not isinstance(spot[3], list):
        raise NoPlaceError(f"what stands behind `{key}:` is not a list: begin each item with `- `")
    if text[spot[1]] != "[":
        return _into_block(here, spot, items).raw
    inside = text[spot[1] + 1 : spot[2] - 1]
    if inside.strip(" "):
        return _into_brackets(here, spot, items).raw
    return _for_brackets(here, spot, items).raw


def _begin_list(here: _Text, root: Spot, key: str, items: Sequence[NewItem]) -> Lines:
    """Begin a list below a key that has nothing behind it, or below a new key at the end."""
    indent = min((here.column_of(spot[0]) for spot in root[3].values()), default=0)
    empty = re.search(rf"^ {{{indent}}}{re.escape(key)}: *(#.*)?$", here.text, re.MULTILINE)
    new = list(_blocks(items, indent + 2))
    if empty:
        return here.lines.put_in(here.line_of(empty.start()) + 1, new)
    last = max((end_of(here.text, spot) for spot in root[3].values()), default=0)
    end = re.compile(r"^\.\.\.", re.MULTILINE).search(here.text, last)
    at = here.line_of(end.start()) if end else len(here.lines.lines)
    return here.lines.put_in(at, [f"{' ' * indent}{key}:", *new])


def _into_block(here: _Text, spot: Spot, items: Sequence[NewItem]) -> Lines:
    """Put items between the lines; from the last to the first, so that no place moves."""
    old, column = spot[3], here.column_of(spot[1])
    gap = [""] if _has_gaps(here, spot) else []
    lines = here.lines
    for place in sorted({item.before for item in items}, reverse=True):
        new = [item for item in items if item.before == place]
        at = _line_after(here, old[place - 1], column) if place else here.line_of(spot[0]) + 1
        rows = [row for item in new for row in (*gap, *block_item(item.data, column))]
        # At the top the gap belongs behind the new items.
        lines = lines.put_in(at, rows if place else [*rows[len(gap) :], *gap])
    return lines


def _into_brackets(here: _Text, spot: Spot, items: Sequence[NewItem]) -> Lines:
    lines = here.lines
    for item in sorted(items, key=lambda item: item.before)[::-1]:
        if item.before:
            index = end_of(here.text, spot[3][item.before - 1])
            lines = lines.put_at(index, f",\n  {flow_item(item.data)}")
        else:
            comma = "," if spot[3] else ""
            lines = lines.put_at(spot[1] + 1, f"\n  {flow_item(item.data)}{comma}\n  ")
    return lines


def _for_brackets(here: _Text, spot: Spot, items: Sequence[NewItem]) -> Lines:
    """Put a list with one `- ` a line in the place of `[]`; a comment behind it stays."""
    at = here.line_of(spot[1])
    column = here.column_of(spot[0])
    back = len(here.text[: spot[1]]) - len(here.text[: spot[1]].rstrip(" "))
    lines = here.lines.put_at(spot[1] - back, "", back + spot[2] - spot[1])
    return lines.put_in(at + 1, list(_blocks(items, column + 2)))


def _blocks(items: Sequence[NewItem], column: int) -> Iterator[str]:
    for item in items:
        yield from block_item(item.data, column)


def _has_gaps(here: _Text, spot: Spot) -> bool:
    """Whether a hand left a blank line before the last item."""
    if len(spot[3]) < 2:
        return False
    dash = here.text.rfind("-", 0, spot[3][-1][1])
    return here.text[:dash].rstrip(" ").endswith("\n\n")


def _line_after(here: _Text, item: Spot, column: int) -> int:
    """Return the line behind an item and the comments that are part of it.

    A comment is part of it when it stands deeper than the item's dash.
    """
    rows = here.text.split("\n")
    last = here.line_of(max(end_of(here.text, item) - 1, item[1]))
    for at in range(last + 1, len(rows)):
        row = rows[at].strip()
        if row and not row.startswith("#"):
            break
        if row and len(rows[at]) - len(rows[at].lstrip()) > column:
            last = at
    return last + 1
