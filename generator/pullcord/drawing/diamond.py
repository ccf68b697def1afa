"""The smallest diamond a text fits into: short lines at the tips, long ones across the middle."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.drawing.block import Block, Row, row_of, row_top
from pullcord.drawing.style import Style
from pullcord.drawing.wrap import fill

_WIDEST_PX = 8192.0
_STEP_PX = 1.0
_ROW_COST = 0.04
"""One more row is worth it when the diamond gets narrower by more than this part."""

_Broken = tuple[tuple[str, Block], ...]


@dataclass(frozen=True)
class FittedDiamond:
    """Rows and the width that holds them; the height follows from the style's slope."""

    rows: tuple[Row, ...]
    width_px: float


def fit_diamond(blocks: tuple[Block, ...], style: Style) -> FittedDiamond:
    """Return the best diamond over every number of rows: a narrow one without many short rows."""
    broken: _Broken = ()
    width, best, count = 0.0, _WIDEST_PX, len(blocks)
    # A diamond is never lower than its rows together, which bounds how many are worth trying.
    while _cost(count * style.line_px / style.slope, count) < best:
        found = _narrowest(blocks, count, style)
        if found is not None and _cost(found[1], count) < best:
            broken, width = found
            best = _cost(width, count)
        count += 1
    return FittedDiamond(tuple(row_of(text, block, style) for text, block in broken), width)


def far_edge(number: int, count: int, style: Style) -> float:
    """Return how far the outer edge of a row is from the middle of all `count` rows, in px."""
    top = row_top(number, count, style)
    return max(abs(top), abs(top + style.line_px))


def _cost(width_px: float, rows: int) -> float:
    return width_px * (1 + _ROW_COST * rows)


def _narrowest(blocks: tuple[Block, ...], count: int, style: Style) -> tuple[_Broken, float] | None:
    low, high = count * style.line_px / style.slope, _WIDEST_PX
    best = _break(blocks, count, high, style)
    while best is not None and high - low > _STEP_PX:
        middle = (low + high) / 2
        tried = _break(blocks, count, middle, style)
        if tried is None:
            low = middle
        else:
            high, best = middle, tried
    # With fewer rows than asked for, the text would stand too high; another count serves better.
    return (best, high) if best is not None and len(best) == count else None


def _break(blocks: tuple[Block, ...], count: int, width: float, style: Style) -> _Broken | None:
    broken: list[tuple[str, Block]] = []
    rooms = [_room(number, count, width, style) for number in range(count)]
    for block in blocks:
        lines = fill(block.words, rooms[len(broken) :])
        if lines is None:
            return None
        broken.extend((text, block) for text in lines)
    return tuple(broken)


def _room(number: int, count: int, width: float, style: Style) -> float:
    height = width * style.slope
    return width * (1 - 2 * far_edge(number, count, style) / height) - style.padding_px
