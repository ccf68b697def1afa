"""What can be wrong with a text before anyone knows what it says."""

from __future__ import annotations

from dataclasses import dataclass

MOST_FLAWS = 100
"""A hostile file is not worth more lines than this on anybody's screen."""


@dataclass(frozen=True, order=True)
class Mark:
    """A place in a text, as an editor counts it."""

    line: int
    """1-based."""
    column: int
    """1-based, in characters."""


@dataclass(frozen=True, order=True)
class TextFlaw:
    """One thing wrong with the text of a file, at a known line."""

    mark: Mark
    rule: str
    """The rule's identifier, such as `duplicate-key`."""
    message: str
    mend: str = ""


def mark_at(text: str, index: int) -> Mark:
    """Return the line and column of a character, counted from 0, of a text with `\\n` line ends."""
    line_start = text.rfind("\n", 0, index) + 1
    return Mark(text.count("\n", 0, index) + 1, index - line_start + 1)
