"""How large a symbol must be for its text, and where the lines stand in it."""

from __future__ import annotations

from functools import lru_cache
from math import ceil, sqrt

from pullcord.drawing.block import Block, Row, blocks_of, lines_of, mark_of, row_of
from pullcord.drawing.chart import Kind, Node
from pullcord.drawing.diamond import far_edge, fit_diamond
from pullcord.drawing.geometry import Label, Shape, Symbol
from pullcord.drawing.style import Style
from pullcord.drawing.wrap import measure_words, wrap_balanced

SYMBOLS: dict[Kind, Symbol] = {
    "start": "terminator",
    "process": "process",
    "decision": "decision",
    "cause": "terminator",
    "hand-over": "predefined",
    "done": "terminator",
    "connector": "terminator",
}
_STADIUM = 1.25
"""Least width of a terminator, as a part of its height."""
BAR_PX = 8
"""From the outline of a predefined process to the line beside it."""


@lru_cache(maxsize=8192)  # A chart is tried in many layouts; its symbols are the same in each.
def shape_of(node: Node, style: Style) -> Shape:
    """Return the node's symbol around (0, 0), just large enough for its text."""
    symbol = SYMBOLS[node.kind]
    if symbol == "decision":
        fitted = fit_diamond(blocks_of(node, style.diamond_word_px, style), style)
        rows, width = fitted.rows, max(fitted.width_px, style.least_height_px / style.slope)
        height = width * style.slope
    else:
        blocks = blocks_of(node, style.column_px, style)
        rows = tuple(row for block in blocks for row in _column(block, style))
        height = max(style.least_height_px, len(rows) * style.line_px + 2 * style.padding_px)
        width = max(row.width_px + 2 * inset for row, inset in _insets(symbol, rows, height, style))
        width = max(width, _least_width(node.kind, height, style))
    if node.kind == "connector":  # A circle by ISO 5807: a stadium as high as it is wide.
        width = height = max(width, height)
    return Shape(
        symbol=symbol,
        x=0.0,
        y=0.0,
        width=_even(width),
        height=_even(height),
        lines=lines_of(rows, style),
        mark=mark_of(rows, style),
    )


def label_of(answers: tuple[str, ...], style: Style) -> Label | None:
    """Return the answers of an edge as a label around (0, 0); None when there is nothing to say."""
    if not answers:
        return None
    words = measure_words(" / ".join(answers), style.answer_px, style.type_px, "regular")
    block = Block(words, "regular", "answer")
    rows = tuple(row_of(text, block, style) for text in wrap_balanced(words, style.answer_px))
    return Label(
        x=0.0,
        y=0.0,
        width=_even(max(row.width_px for row in rows) + style.type_px),
        height=_even(len(rows) * style.line_px),
        lines=lines_of(rows, style),
    )


def _least_width(kind: Kind, height: float, style: Style) -> float:
    if kind == "connector" or SYMBOLS[kind] != "terminator":
        return style.least_height_px
    # A stadium that is hardly wider than high would be taken for a connector's circle.
    return height * _STADIUM


def _column(block: Block, style: Style) -> tuple[Row, ...]:
    lines = wrap_balanced(block.words, style.column_px)
    return tuple(row_of(text, block, style) for text in lines)


def _insets(
    symbol: Symbol, rows: tuple[Row, ...], height: float, style: Style
) -> list[tuple[Row, float]]:
    if symbol != "terminator":
        side = style.padding_px + (BAR_PX if symbol == "predefined" else 0)
        return [(row, side) for row in rows]
    radius = height / 2
    return [
        (row, radius - sqrt(radius**2 - far_edge(i, len(rows), style) ** 2) + style.padding_px / 2)
        for i, row in enumerate(rows)
    ]


def _even(length_px: float) -> float:
    return float(2 * ceil(length_px / 2))
