"""The smallest diamond a text fits into: short lines at the tips, long ones across the middle."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.drawing.block import Block, Row, row_of, row_top
from pullcord.drawing.style import Style
from pullcord.drawing.wrap import line_starts, lines_from

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
        found = _narrowest(blocks, count, best, style)
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


def _narrowest(
    blocks: tuple[Block, ...], count: int, bound: float, style: Style
) -> tuple[_Broken, float] | None:
    """Return the narrowest diamond of so many rows; None unless it costs less than `bound`."""
    edges = [far_edge(number, count, style) for number in range(count)]
    if _starts(blocks, _rooms(edges, bound / (1 + _ROW_COST * count), style)) is None:
        return None
    low, high = count * style.line_px / style.slope, _WIDEST_PX
    best = _starts(blocks, _rooms(edges, high, style))
    while best is not None and high - low > _STEP_PX:
        middle = (low + high) / 2
        tried = _starts(blocks, _rooms(edges, middle, style))
        if tried is None:
            low = middle
        else:
            high, best = middle, tried
    # With fewer rows than asked for, the text would stand too high; another count serves better.
    if best is None or sum(map(len, best)) != count:
        return None
    return _broken(blocks, best), high


def _starts(blocks: tuple[Block, ...], rooms: list[float]) -> list[list[int]] | None:
    """Return, for each block, where its lines begin; None when the rooms do not hold them all."""
    found: list[list[int]] = []
    taken = 0
    for block in blocks:
        starts = line_starts(block.words, rooms[taken:])
        if starts is None:
            return None
        found.append(starts)
        taken += len(starts)
    return found


def _broken(blocks: tuple[Block, ...], found: list[list[int]]) -> _Broken:
    return tuple(
        (text, block)
        for block, starts in zip(blocks, found, strict=True)
        for text in lines_from(block.words, starts)
    )


def _rooms(edges: list[float], width: float, style: Style) -> list[float]:
    height = width * style.slope
    return [width * (1 - 2 * edge / height) - style.padding_px for edge in edges]
