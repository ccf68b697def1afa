"""Text from a file, cut into paragraphs. It is data: nothing in it is ever read as markup."""

from __future__ import annotations

import re
from dataclasses import dataclass


def paragraphs(text: str | None) -> tuple[str, ...]:
    """Return the paragraphs of a text, which blank lines part; none for no text."""
    return tuple(part.strip() for part in re.split(r"\n\s*\n", text or "") if part.strip())


def plain(name: str) -> str:
    """Return a name as words: `capacitor-discharge` is `capacitor discharge`."""
    return name.replace("-", " ")


@dataclass(frozen=True)
class Piece:
    """A stretch of a sentence."""

    text: str
    is_code: bool
    """Whether it stood between backticks: something to be typed as it is."""


def pieces(text: str) -> tuple[Piece, ...]:
    """Return a sentence of our own cut at its backticks; an unpaired one stays as it is."""
    parts = re.split(r"`([^`]+)`", text)
    found = (Piece(part, is_code=bool(place % 2)) for place, part in enumerate(parts))
    return tuple(piece for piece in found if piece.text)
