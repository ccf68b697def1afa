"""A file's text as lines that can be put back together byte for byte."""

from __future__ import annotations

import re
from dataclasses import dataclass

MARK = "\ufeff"
"""The byte order mark some editors put before the first line."""

_LINE = re.compile(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+\Z")


@dataclass(frozen=True)
class Lines:
    """A text whose lines keep the ends they were written with."""

    mark: str
    """The byte order mark, or nothing."""
    lines: tuple[str, ...]
    """With their ends; only the last may have none."""

    @property
    def end(self) -> str:
        """Return the line end the text uses: that of its first line."""
        first = self.lines[0] if self.lines else "\n"
        return first[len(first.rstrip("\r\n")) :] or "\n"

    @property
    def raw(self) -> bytes:
        """Return the whole text as bytes."""
        return (self.mark + "".join(self.lines)).encode()

    def put_in(self, at: int, new: list[str]) -> Lines:
        """Return the text with new lines before line `at`, counted from 0; they have no ends."""
        before, after = list(self.lines[:at]), self.lines[at:]
        if before and before[-1] == before[-1].rstrip("\r\n"):
            before[-1] += self.end
        return Lines(self.mark, (*before, *(line + self.end for line in new), *after))

    def put_at(self, index: int, new: str, instead_of: int = 0) -> Lines:
        """Return the text with `new` at a character, in place of so many characters.

        `index` counts as in the text with `\\n` line ends; what is replaced is within one line.
        """
        text = "".join(line.rstrip("\r\n") + "\n" for line in self.lines)
        at = text.count("\n", 0, index)
        column = index - (text.rfind("\n", 0, index) + 1)
        line = self.lines[at]
        fresh = line[:column] + new.replace("\n", self.end) + line[column + instead_of :]
        return Lines(self.mark, (*self.lines[:at], fresh, *self.lines[at + 1 :]))


def split_lines(raw: bytes) -> Lines:
    """Return the lines of a file that is known to be UTF-8."""
    text = raw.decode("utf-8")
    mark = MARK if text.startswith(MARK) else ""
    return Lines(mark, tuple(_LINE.findall(text.removeprefix(MARK))))
