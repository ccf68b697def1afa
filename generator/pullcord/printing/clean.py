"""Text as it may be handed to the typesetting engine, whatever somebody wrote into a file."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Mapping
from typing import Any

from pullcord.drawing.font import read_face

UNKNOWN = "\ufffd"
"""Printed for what cannot be."""
NO_BREAK = "\u00a0"
_ALIKE = str.maketrans({"✕": "×"})
"""Characters of the pages that our typeface lacks, and what looks like them."""
_NEVER = {"Cc", "Cs", "Cn"}
_LONG_WORD = re.compile(r"\S{30,}")
_PIECE = re.compile(r"\S{15}")
_MAY_BREAK = "\u200b"


def each_text(data: Any, change: Callable[[str], str]) -> Any:
    """Return plain data with every text in it changed; keys stay."""
    if isinstance(data, str):
        return change(data)
    if isinstance(data, Mapping):
        return {key: each_text(value, change) for key, value in data.items()}
    if isinstance(data, (list, tuple)):
        return [each_text(value, change) for value in data]
    return data


def printable(text: str) -> str:
    """Return the text on one line, without what no page may hold; words of 30 and more may break.

    The engine would let such a word run off the sheet.
    """
    if not text.isprintable():  # Else there are no such characters, and no spaces but the one.
        one_line = (" " if c.isspace() and c != NO_BREAK else c for c in text)
        text = "".join(UNKNOWN if unicodedata.category(c) in _NEVER else c for c in one_line)
    return _LONG_WORD.sub(_with_breaks, text.translate(_ALIKE))


def in_our_font(text: str) -> str:
    """Return the text with every character that our typeface lacks made unknown."""
    known = read_face("regular").advances_em
    return "".join(c if ord(c) in known or c == _MAY_BREAK else UNKNOWN for c in text)


def _with_breaks(word: re.Match[str]) -> str:
    return _PIECE.sub(lambda piece: piece[0] + _MAY_BREAK, word[0])
