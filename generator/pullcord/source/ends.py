"""Where a value ends: not where the next one begins, as the reader of YAML has it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from pullcord.source.compose import Spot


def end_of(text: str, spot: Spot) -> int:
    """Return the character behind the last one of a value.

    Blank lines behind a block of text count only when its `+` keeps them.
    """
    _, start, end, below = spot
    if text[start : start + 1] in ("{", "["):
        return end
    if isinstance(below, Mapping | list):
        parts: Sequence[Any] = list(below.values()) if isinstance(below, Mapping) else below
        return max((end_of(text, part) for part in parts), default=end)
    if text[start : start + 1] in ("|", ">") and not _keeps_lines(text, start):
        return start + len(text[start:end].rstrip(" \n"))
    return end


def _keeps_lines(text: str, start: int) -> bool:
    return "+" in text[start : text.find("\n", start)].partition("#")[0]
