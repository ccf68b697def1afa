"""How wide a line of text is, before anything draws it.

Widths are sums of advances, without kerning and ligatures; the charts are drawn that way too. Every
drawn line is also pinned to its measured width, so that a character we can only guess at here
(drawn from another typeface on the reader's machine) still ends where it was measured to end.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache

from pullcord.drawing.font import Weight, read_face

_LETTER_EM = 0.65
_IDEOGRAPH_EM = 1.0
_SIGN_EM = 1.25
_ZERO_WIDTH = {"Mn", "Me", "Cf"}


@lru_cache(maxsize=32768)  # Paper measures the same words for many widths.
def text_width_px(text: str, size_px: float, weight: Weight) -> float:
    """Return the width of a line of text at a type size, both in px."""
    return size_px * sum(advance_em(character, weight) for character in text)


def advance_em(character: str, weight: Weight) -> float:
    """Return how far a character moves the pen, in multiples of the type size."""
    known = read_face(weight).advances_em.get(ord(character))
    return guess_em(character) if known is None else known


def guess_em(character: str) -> float:
    """Return a width for a character the typeface lacks, on the wide side of what is usual.

    Accents stand on the letter before them; East Asian signs fill a square (Unicode TR 11);
    letters of other scripts are about as wide as a wide Latin one; pictures are the widest.
    """
    category = unicodedata.category(character)
    if category in _ZERO_WIDTH:
        return 0.0
    if category == "So" or ord(character) >= 0x1F000:
        return _SIGN_EM
    if unicodedata.east_asian_width(character) in "WF":
        return _IDEOGRAPH_EM
    return _LETTER_EM if category[0] in "LN" else _IDEOGRAPH_EM
