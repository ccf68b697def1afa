"""A node's text as measured blocks, and blocks broken into rows as lines with a place."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.drawing.chart import Node, Paragraph
from pullcord.drawing.font import Weight, read_face
from pullcord.drawing.geometry import LineRole, Mark, TextLine, rounded
from pullcord.drawing.measure import text_width_px
from pullcord.drawing.style import Style
from pullcord.drawing.wrap import Words, measure_words
from pullcord.safety.box import SignalWord

LIMITS_WEIGHT: Weight = "bold"
_MARK_EM = 1.15
_GAP_EM = 0.35


@dataclass(frozen=True)
class Block:
    """A piece of text that starts on a row of its own."""

    words: Words
    weight: Weight
    role: LineRole
    lead_px: float = 0
    """Room on the left of its only row, for a hazard symbol."""


@dataclass(frozen=True)
class Row:
    """One line of a block."""

    text: str
    block: Block
    width_px: float
    """With its lead."""


def blocks_of(node: Node, widest_px: float, style: Style) -> tuple[Block, ...]:
    """Return the signal word, if any, then the paragraphs.

    No piece is wider than `widest_px` but limits, which stay on one line.
    """
    signal = (_signal_block(node.signal, node.note, style),) if node.signal else ()
    return (*signal, *(_text_block(part, widest_px, style) for part in node.paragraphs))


def row_of(text: str, block: Block, style: Style) -> Row:
    """Return a row with its measured width."""
    width = text_width_px(text, style.type_px, block.weight)
    return Row(text, block, width + block.lead_px)


def lines_of(rows: tuple[Row, ...], style: Style) -> tuple[TextLine, ...]:
    """Return the rows as lines, one below the other, the whole centred on (0, 0)."""
    return tuple(_line(row, row_top(i, len(rows), style), style) for i, row in enumerate(rows))


def mark_of(rows: tuple[Row, ...], style: Style) -> Mark | None:
    """Return the hazard symbol that stands left of the first row, if that has room for one."""
    if not rows or not rows[0].block.lead_px:
        return None
    size = _MARK_EM * style.type_px
    left = -rows[0].width_px / 2
    top = row_top(0, len(rows), style) + (style.line_px - size) / 2
    return _mark(left, top, size)


def row_top(number: int, count: int, style: Style) -> float:
    """Return where a row begins, in px below the middle of all `count` rows."""
    return (number - count / 2) * style.line_px


def _text_block(part: Paragraph, widest_px: float, style: Style) -> Block:
    if part.role == "limits":
        width = text_width_px(part.text, style.type_px, LIMITS_WEIGHT)
        return Block(Words(((part.text, width),), 0), LIMITS_WEIGHT, part.role)
    weight: Weight = "bold" if part.role == "title" else "regular"
    return Block(measure_words(part.text, widest_px, style.type_px, weight), weight, part.role)


def _signal_block(signal: SignalWord, note: str, style: Style) -> Block:
    # ANSI Z535.6 keeps the safety alert symbol off NOTICE: nobody is hurt by what that tells of.
    lead = 0.0 if signal is SignalWord.NOTICE else (_MARK_EM + _GAP_EM) * style.type_px
    text = f"{signal.name} {note}".strip()
    width = text_width_px(text, style.type_px, "bold")
    return Block(Words(((text, lead + width),), 0), "bold", "signal", lead)


def _line(row: Row, top: float, style: Style) -> TextLine:
    face = read_face(row.block.weight)
    type_height = (face.ascent_em + face.descent_em) * style.type_px
    baseline = top + (style.line_px - type_height) / 2 + face.ascent_em * style.type_px
    return TextLine(
        text=row.text,
        x=rounded(row.block.lead_px / 2),
        y=rounded(baseline),
        width=rounded(row.width_px - row.block.lead_px),
        size=style.type_px,
        weight=row.block.weight,
        role=row.block.role,
    )


def _mark(left: float, top: float, size: float) -> Mark:
    def at(x: float, y: float) -> tuple[float, float]:
        return rounded(left + x * size), rounded(top + y * size)

    return Mark(
        triangle=(at(0.5, 0.04), at(1, 0.92), at(0, 0.92)),
        bar=(at(0.42, 0.34), at(0.58, 0.34), at(0.55, 0.8), at(0.45, 0.8)),
    )
