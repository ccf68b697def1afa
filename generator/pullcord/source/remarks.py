"""Comments in a file that speak to Pullcord, and the lines they speak of.

A comment behind a value speaks of its line; one that has a line of its own speaks of the next line
that holds more than a comment. Where a text begins on that line, its other lines belong to it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from pullcord.source.comments import comments_in
from pullcord.source.compose import Span, compose
from pullcord.source.decode import read_text
from pullcord.source.flaw import Mark, mark_at

_TO_US = re.compile(r"pullcord\s*:\s*(.*)", re.IGNORECASE)
_CONTENT = re.compile(r"^[ \t]*[^ \t\n#]", re.MULTILINE)


@dataclass(frozen=True)
class Remark:
    """One comment to Pullcord."""

    mark: Mark
    """Where its `#` stands."""
    text: str
    """What is behind `pullcord:`."""
    first_line: int
    """The lines it speaks of, 1-based; both are 0 when there is nothing left to speak of."""
    last_line: int

    def speaks_of(self, line: int) -> bool:
        """Say whether a line is one of those."""
        return self.first_line <= line <= self.last_line


def read_remarks(raw: bytes) -> tuple[Remark, ...]:
    """Return the comments of a file that begin with `pullcord:`, in order; never raises."""
    if b"#" not in raw or b"pullcord" not in raw.lower():
        return ()
    text, flaws = read_text(raw)
    if not text or any(flaw.rule != "tab-indent" for flaw in flaws):
        return ()
    composed = compose(text)
    if composed.data is None:
        return ()
    found = (
        (index, _TO_US.fullmatch(comment))
        for index, comment, _ in comments_in(text, composed.spans)
    )
    return tuple(_remark(text, composed.spans, index, to[1]) for index, to in found if to)


def _remark(text: str, spans: Sequence[Span], index: int, said: str) -> Remark:
    line_start = text.rfind("\n", 0, index) + 1
    if not text[line_start:index].strip():
        content = _CONTENT.search(text, index)
        if content is None:
            return Remark(mark_at(text, index), said, 0, 0)
        line_start = content.start()
    line_end = text.find("\n", line_start)
    line_end = len(text) if line_end < 0 else line_end
    begun = [end for start, end in spans if line_start <= start < line_end]
    last = len(text[: max(begun, default=line_start)].rstrip())
    first_line = mark_at(text, line_start).line
    return Remark(mark_at(text, index), said, first_line, max(first_line, mark_at(text, last).line))
