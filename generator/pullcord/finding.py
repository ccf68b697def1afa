"""What the validator reports.

A rule yields a `Flaw`: a place in the author's file and the words. Whoever knows the file and how
grave the rule is turns it into a `Finding`. Leaf types: they know no other part of Pullcord.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

Place = tuple[str | int, ...]
"""Where in a document: keys and list positions from its root, such as ("steps", "plug", "do")."""


class Severity(StrEnum):
    """How grave a finding is: an error stops the build, a warning does not."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True)
class Flaw:
    """One thing wrong with a document, before its line is known."""

    at: Place
    """The value (or, when it is a key that is wrong, the key) the author should look at."""
    message: str
    """What is wrong, in the author's words; one line, or several for a printed path."""
    mend: str = ""
    """What would put it right."""
    rule: str = ""
    """The rule's identifier, when whoever yields the flaw speaks for several rules."""
    is_key: bool = False
    """Whether the key at that place is wrong, rather than its value."""
    word: str = ""
    """The word of the value to point at; empty for the value as a whole."""


@dataclass(frozen=True, order=True)
class Finding:
    """A flaw with its place in a file. Ordered by file, line and column."""

    file: str
    """The path as the author would type it."""
    line: int
    """1-based."""
    column: int
    """1-based."""
    rule: str
    """The rule's identifier, such as `unknown-target`."""
    severity: Severity
    message: str
    mend: str = ""
