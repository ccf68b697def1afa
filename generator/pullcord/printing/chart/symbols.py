"""The symbols of a strip: as wide as the strip lets them be, and as low as their text allows.

A signal word and the numbers of its notes stand in one line, or in two where one would make the
symbol larger.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from math import inf, sqrt

from pullcord.drawing.block import Block, Row, blocks_of, lines_of, mark_of, row_of
from pullcord.drawing.chart import Node
from pullcord.drawing.font import Weight
from pullcord.drawing.geometry import Label, Shape
from pullcord.drawing.shape import BAR_PX, SYMBOLS
from pullcord.drawing.style import Style
from pullcord.drawing.wrap import measure_words, wrap_balanced
from pullcord.printing.chart.low_diamond import low_diamond

CORNER_PX = 16.0
"""The radius of a terminator's corners, or half its height if that is less."""
MANY = 8192
"""Symbols remembered: those of the largest procedure at every width that is tried."""
_WORD = 0.55
"""The longest word of a check, as a part of its width."""


@lru_cache(maxsize=MANY)  # A procedure is printed for every machine: most symbols stay the same.
def check_shape(node: Node, width_px: float, style: Style) -> Shape:
    """Return a diamond of the given width."""
    (rows, height), *others = (
        low_diamond(blocks, width_px, style) for blocks in _blocks(node, width_px * _WORD, style)
    )
    for tried in others:
        if tried[1] < height - style.line_px / 2:
            rows, height = tried
    return _shape(node, rows, width_px, height, style)


@lru_cache(maxsize=MANY)
def box_shape(node: Node, widest_px: float, style: Style) -> Shape:
    """Return a rectangle, a terminator or a predefined process, no wider than that."""
    inner_px = widest_px - 2 * _side(node, style)
    tried = [_boxed(node, blocks, inner_px, style) for blocks in _blocks(node, inner_px, style)]
    fitting = [shape for shape in tried if shape.width <= widest_px]
    return min(fitting or tried, key=lambda shape: (shape.height, shape.width))


@lru_cache(maxsize=MANY)
def answer_label(answers: tuple[str, ...], widest_px: float, style: Style) -> Label | None:
    """Return each answer below the one before, all beginning at the left edge of the label."""
    rows = [
        row
        for answer in answers
        for row in _rows(_answer(answer, widest_px, style), widest_px, style)
    ]
    if not rows:
        return None
    width = max(row.width_px for row in rows)
    lines = lines_of(tuple(rows), style)
    lines = tuple(replace(line, x=(line.width - width) / 2) for line in lines)
    return Label(x=0.0, y=0.0, width=width, height=len(rows) * style.line_px, lines=lines)


def widest_word(texts: Iterable[str], style: Style, weight: Weight) -> float:
    """Return the width of the widest word in px; 0 for no text."""
    measured = (measure_words(text, inf, style.type_px, weight) for text in texts)
    return max((words.widest_px for words in measured), default=0.0)


def signal_px(node: Node, style: Style) -> float:
    """Return the width of a node's hazard symbol and signal word, which stay in one line."""
    if node.signal is None:
        return 0.0
    word, *_ = blocks_of(replace(node, note=""), inf, style)
    return word.words.pieces[0][1]


def _answer(answer: str, widest_px: float, style: Style) -> Block:
    words = measure_words(answer, widest_px, style.type_px, "regular")
    return Block(words, "regular", "answer")


def _blocks(node: Node, word_px: float, style: Style) -> Iterator[tuple[Block, ...]]:
    """Yield the node's text with its note numbers behind the signal word, then below it."""
    yield blocks_of(node, word_px, style)
    if node.signal and node.note:
        word, *rest = blocks_of(replace(node, note=""), word_px, style)
        numbers = measure_words(node.note, word_px, style.type_px, "bold")
        yield word, Block(numbers, "bold", "signal"), *rest


def _boxed(node: Node, blocks: tuple[Block, ...], inner_px: float, style: Style) -> Shape:
    rows = tuple(row for block in blocks for row in _rows(block, inner_px, style))
    height = max(style.least_height_px, len(rows) * style.line_px + 2 * style.padding_px)
    width = max(row.width_px for row in rows) + 2 * _side(node, style)
    return _shape(node, rows, max(width, style.least_height_px), height, style)


def _side(node: Node, style: Style) -> float:
    match SYMBOLS[node.kind]:
        case "predefined":
            return style.padding_px + BAR_PX
        case "terminator":
            above = CORNER_PX - style.padding_px
            return CORNER_PX - sqrt(CORNER_PX**2 - above**2) + style.padding_px / 2
        case _:
            return style.padding_px


def _rows(block: Block, widest_px: float, style: Style) -> Iterator[Row]:
    for text in wrap_balanced(block.words, widest_px):
        yield row_of(text, block, style)


def _shape(
    node: Node, rows: tuple[Row, ...], width_px: float, height_px: float, style: Style
) -> Shape:
    return Shape(
        symbol=SYMBOLS[node.kind],
        x=0.0,
        y=0.0,
        width=width_px,
        height=height_px,
        lines=lines_of(rows, style),
        mark=mark_of(rows, style),
    )
