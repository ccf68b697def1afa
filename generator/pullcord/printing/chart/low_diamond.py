"""The lowest diamond of a given width that holds a text.

On the screen all diamonds of a chart have one slope. In a strip of paper they have one width, which
keeps the ways that leave them in line, and are as low as their text lets them be.
"""

from __future__ import annotations

from pullcord.drawing.block import Block, Row, row_of
from pullcord.drawing.diamond import far_edge
from pullcord.drawing.style import Style
from pullcord.drawing.wrap import line_starts, lines_from

_HIGHEST = 12
"""In widths: any text fits into that."""
_STEP_PX = 2.0

Starts = tuple[list[int], ...]
"""For every block, the places where its lines begin."""


def low_diamond(
    blocks: tuple[Block, ...], width_px: float, style: Style
) -> tuple[tuple[Row, ...], float]:
    """Return the rows and the height in px; no word of a block may be wider than half the width."""
    count, height = _least_rows(blocks, width_px, style), _HIGHEST * width_px
    starts: Starts = ()
    # A diamond is higher than its rows together, which bounds how many are worth trying.
    while count * style.line_px < height:
        found = _lowest(blocks, count, (width_px, height), style)
        if found is not None:
            starts, height = found
        count += 1
    rows = tuple(
        row_of(text, block, style)
        for block, begun in zip(blocks, starts, strict=False)
        for text in lines_from(block.words, begun)
    )
    return rows, height


def _least_rows(blocks: tuple[Block, ...], width_px: float, style: Style) -> int:
    """Return how many rows the text would have if all were as wide as the widest may be."""
    rooms = [width_px - style.padding_px] * max(len(block.words.pieces) for block in blocks)
    rows = (line_starts(block.words, rooms) or () for block in blocks)
    return sum(max(1, len(lines)) for lines in rows)


def _lowest(
    blocks: tuple[Block, ...], count: int, most_px: tuple[float, float], style: Style
) -> tuple[Starts, float] | None:
    """Return the lowest diamond with so many rows; None when it is not lower than the given one."""
    width, high = most_px
    low = count * style.line_px
    edges = [far_edge(number, count, style) for number in range(count)]
    best = _break(blocks, _rooms(edges, width, high, style))
    while best is not None and high - low > _STEP_PX:
        middle = (low + high) / 2
        tried = _break(blocks, _rooms(edges, width, middle, style))
        if tried is None:
            low = middle
        else:
            high, best = middle, tried
    # With fewer rows than asked for, the text would stand too high; another count serves better.
    return (best, high) if best is not None and sum(map(len, best)) == count else None


def _rooms(edges: list[float], width: float, height: float, style: Style) -> list[float]:
    """Return how wide each row may be, by how far its outer edge is from the middle."""
    return [width * (1 - 2 * edge / height) - style.padding_px for edge in edges]


def _break(blocks: tuple[Block, ...], rooms: list[float]) -> Starts | None:
    broken: list[list[int]] = []
    for block in blocks:
        starts = line_starts(block.words, rooms)
        if starts is None:
            return None
        broken.append(starts)
        rooms = rooms[len(starts) :]
    return tuple(broken)
