"""The measures of the charts: type sizes, gaps, and how wide a text may run. All in px."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

Arrangement = Literal["free", "column"]


@dataclass(frozen=True)
class Style:
    """One set of measures. The first of several that fits the screen is taken for a chart."""

    arrangement: Arrangement = "free"
    reach: int = 1
    """In a column, how many steps apart two checks may stand that share an end."""
    row_most: int = 99
    """In a column, how many ends of one check may share a row; more are listed."""
    type_px: float = 16
    """Size of all type: what is read at arm's length on a tablet."""
    line_px: float = 21
    """From one baseline to the next."""
    padding_px: float = 12
    """Between text and outline."""
    least_height_px: float = 48
    """A gloved thumb hits it."""
    column_px: float = 180
    """How wide text may run in rectangles and stadiums."""
    diamond_word_px: float = 220
    """How long a single word may be across a diamond before it is broken."""
    answer_px: float = 130
    """How wide an answer may run."""
    slope: float = 0.6
    """Height of a diamond as a part of its width."""
    beside_px: float = 28
    """Between neighbours in a row."""
    below_px: float = 24
    """Between rows, above and below the answers."""
    margin_px: float = 6
    """Around the whole chart."""


_ROOMY = Style(arrangement="column")
_CLOSE = Style(arrangement="column", column_px=150, answer_px=105, beside_px=18)
_CLOSEST = Style(arrangement="column", column_px=130, answer_px=90, beside_px=10, slope=0.75)

SCREEN_STYLES = (
    Style(),
    _ROOMY,
    _CLOSE,
    replace(_CLOSE, row_most=2),
    replace(_CLOSE, row_most=2, reach=0),
    replace(_CLOSEST, row_most=2),
    replace(_CLOSEST, row_most=2, reach=0),
    replace(_CLOSEST, row_most=3, reach=0),
)
"""From the roomiest to the narrowest. Type keeps its size in all of them."""
