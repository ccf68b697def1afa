"""Text broken into lines before it is set, where the height of what is set must be known."""

from __future__ import annotations

from functools import lru_cache

from pullcord.drawing.font import Weight
from pullcord.drawing.wrap import fill, measure_words
from pullcord.printing.paper import MM_PER_PX, PT_PER_PX


@lru_cache(maxsize=4096)  # Heads and feet are measured for every division that is tried.
def break_lines(
    text: str, width_mm: float, type_pt: float, weight: Weight = "regular"
) -> tuple[str, ...]:
    """Return a text in lines no wider than the width at the given size; none for no text."""
    width_px = width_mm / MM_PER_PX - 1
    one_line = " ".join(text.split())
    if not one_line:
        return ()
    words = measure_words(one_line, width_px, type_pt / PT_PER_PX, weight)
    return fill(words, [width_px] * len(words.pieces)) or ()
