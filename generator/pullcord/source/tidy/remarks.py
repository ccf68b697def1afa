"""Which entry a comment belongs to.

A comment behind something belongs to it. One on a line of its own belongs to what follows, unless
it stands deeper than that: then it ends the block before it. What stands above everything else,
and at the margin below everything else, belongs to the file.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from pullcord.source.compose import Span
from pullcord.source.tidy.parts import Entry

_TO_US = re.compile(r"#\s*pullcord\s*:", re.IGNORECASE)
"""A comment that speaks of the next line stays with it."""
_BLANK = re.compile(r"^[ \t]*$", re.MULTILINE)


@dataclass
class Rest:
    """What belongs to the file as a whole: comments, and "" for a blank line."""

    head: list[str] = field(default_factory=list)
    foot: list[str] = field(default_factory=list)


@dataclass(frozen=True)
class _Line:
    """A comment on a line of its own, or a blank line."""

    index: int
    column: int
    text: str


def attach(
    text: str, entries: Sequence[Entry], comments: Sequence[int], values: Sequence[Span]
) -> Rest:
    """Give every comment and blank line of a text to an entry, and return what is left.

    `entries` are in the order of the text; what lies within `values` is part of them.
    """
    starts = [entry.start for entry in entries]
    own: list[_Line] = []
    for index in comments:
        line_start = text.rfind("\n", 0, index) + 1
        if _is_within(index, values):
            continue
        words = text[index : _line_end(text, index)].rstrip()
        owner = bisect_left(starts, index) - 1
        before = text[line_start:index].strip()
        if before in ("", "---", "...") or owner < 0:
            own.append(_Line(index, index - line_start, words))
        else:
            entries[owner].beside.append(words)
    rest = Rest()
    for line in sorted([*own, *_blank_lines(text, values)], key=lambda line: line.index):
        _give(line, entries, bisect_left(starts, line.index), rest)
    while rest.head and _TO_US.match(rest.head[-1]):
        entries[0].above.insert(0, rest.head.pop())
    return rest


def _give(line: _Line, entries: Sequence[Entry], at: int, rest: Rest) -> None:
    """Give one line to the entry behind it, or to one of those before."""
    if at == 0:
        rest.head.append(line.text)
    elif at < len(entries) and (not line.text or line.column <= entries[at].column):
        entries[at].above.append(line.text)
    elif at == len(entries) and (not line.text or line.column <= entries[0].column):
        rest.foot.append(line.text)
    else:
        around = (entry for entry in reversed(entries[:at]) if entry.column <= line.column)
        next(around, entries[0]).below.append(line.text)


def _blank_lines(text: str, values: Sequence[Span]) -> Iterator[_Line]:
    for match in _BLANK.finditer(text):
        if match.start() < len(text) and not _is_within(match.start(), values):
            yield _Line(match.start(), 0, "")


def _is_within(index: int, values: Sequence[Span]) -> bool:
    at = bisect_left(values, (index, index)) - 1
    return at >= 0 and values[at][0] < index < values[at][1]


def _line_end(text: str, index: int) -> int:
    end = text.find("\n", index)
    return len(text) if end < 0 else end
