"""The lowest diamond of a given width that holds a text.

On the screen all diamonds of a chart have one slope. In a strip of paper they have one width, which
keeps the ways that leave them in line, and are as low as their text lets them be.
"""

from __future__ import annotations

from pullcord.drawing.block import Block, Row, row_of
from pullcord.drawing.diamond import far_edge
from pullcord.drawing.style import Style
from pullcord.drawing.wrap import fill

_HIGHEST = 12
"""In widths: any text fits into that."""
_STEP_PX = 2.0

Broken = tuple[tuple[str, Block], ...]


def low_diamond(
    blocks: tuple[Block, ...], width_px: float, style: Style
) -> tuple[tuple[Row, ...], float]:
    """Return the rows and the height in px; no word of a block may be wider than half the width."""
    count, height = len(blocks), _HIGHEST * width_px
    broken: Broken = ()
    # A diamond is higher than its rows together, which bounds how many are worth trying.
    while count * style.line_px < height:
        found = _lowest(blocks, count, (width_px, height), style)
        if found is not None:
            broken, height = found
        count += 1
    return tuple(row_of(text, block, style) for text, block in broken), height


def _lowest(
    blocks: tuple[Block, ...], count: int, most_px: tuple[float, float], style: Style
) -> tuple[Broken, float] | None:
    """Return the lowest diamond with so many rows; None when it is not lower than the given one."""
    width, high = most_px
    low = count * style.line_px
    best = _break(blocks, count, (width, high), style)
    while best is not None and high - low > _STEP_PX:
        middle = (low + high) / 2
        tried = _break(blocks, count, (width, middle), style)
        if tried is None:
            low = middle
        else:
            high, best = middle, tried
    # With fewer rows than asked for, the text would stand too high; another count serves better.
    return (best, high) if best is not None and len(best) == count else None


def _break(
    blocks: tuple[Block, ...], count: int, size_px: tuple[float, float], style: Style
) -> Broken | None:
    width, height = size_px
    rooms = [
        width * (1 - 2 * far_edge(number, count, style) / height) - style.padding_px
        for number in range(count)
    ]
    broken: list[tuple[str, Block]] = []
    for block in blocks:
        lines = fill(block.words, rooms[len(broken) :])
        if lines is None:
            return None
        broken.extend((text, block) for text in lines)
    return tuple(broken)
