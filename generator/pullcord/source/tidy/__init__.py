"""A YAML file in its canonical form: keys in order, lines of a length, comments where they were.

It works on the text. What a hand chose and nobody needs to change stays: quotes, blank lines (one
at a time), brackets as long as they fit on a line, the line breaks of a folded text.

    parts      the text as entries, each with its comments
    remarks    which entry a comment belongs to
    texts      one value as lines
    emit       entries as lines
"""

from __future__ import annotations

from pullcord.source.tidy.tidy import TidyError as TidyError
from pullcord.source.tidy.tidy import tidy as tidy
