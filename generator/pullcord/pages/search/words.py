"""The words of a text, as they are looked up. `search.js` does the same to what is typed.

A code is found however it is spaced: letters and figures that stand side by side are also one
word, and a word made of both is also its parts. So `12V` and `12 V` meet, and `P-0301` and `P0301`.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

_WORD = re.compile(r"[^\W_]+")
_PART = re.compile(r"\d+|[^\W\d_]+")
_BETWEEN = re.compile(r"[ \u00a0\u202f\-\u2010-\u2013./]?")
_LONGEST = 40


def fold(text: str) -> str:
    """Return the text in small letters, without accents: `Kühler` and `kuhler` are one."""
    parts = unicodedata.normalize("NFKD", text.lower())
    return "".join(c for c in parts if not unicodedata.combining(c))


def words_of(text: str) -> Iterator[str]:
    """Yield every word to look up, repeated as often as it stands there."""
    folded = fold(text)
    before: re.Match[str] | None = None
    for word in _WORD.finditer(folded):
        yield word[0][:_LONGEST]
        yield from _parts(word[0])
        if before and _is_code(before, word, folded):
            yield (before[0] + word[0])[:_LONGEST]
        before = word


def _parts(word: str) -> Iterator[str]:
    """Yield the runs of letters and of figures of a word that has both."""
    parts = _PART.findall(word)
    if len(parts) > 1:
        yield from (part[:_LONGEST] for part in parts)


def _is_code(before: re.Match[str], word: re.Match[str], text: str) -> bool:
    """Say whether two neighbours, one of letters and one of figures, make one code."""
    pair = (before[0][-1].isdigit(), word[0][0].isdigit())
    between = text[before.end() : word.start()]
    return pair[0] != pair[1] and _BETWEEN.fullmatch(between) is not None
