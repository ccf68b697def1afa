"""The known name an author most likely meant."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches
from itertools import islice

_MOST_NAMES = 2000
_LONGEST = 60


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known name closest to a word, or None when none is close."""
    names = list(islice(known, _MOST_NAMES))
    wanted = _bare(word)
    same = next((name for name in names if _bare(name) == wanted), None)
    if same is not None or len(word) > _LONGEST:
        return same
    return next(iter(get_close_matches(word, names, n=1)), None)


def did_you_mean(word: str, known: Iterable[str], otherwise: str = "") -> str:
    """Return a question that names the nearest known name, or other words when none is near."""
    name = nearest(word, known)
    return f"did you mean `{name}`?" if name is not None else otherwise


def listed(names: Iterable[str]) -> str:
    """Return names as one line of text: `a`, `b`, `c`."""
    return ", ".join(f"`{name}`" for name in names)


def _bare(word: str) -> str:
    return word.casefold().replace("_", "-").replace(" ", "-")
