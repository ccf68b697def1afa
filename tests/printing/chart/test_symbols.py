"""Symbols hold their text, and are no larger than they must be."""

from __future__ import annotations

import pytest

from pullcord.drawing.block import blocks_of
from pullcord.drawing.chart import Kind, Node, Paragraph
from pullcord.drawing.geometry import Shape
from pullcord.printing.chart.low_diamond import low_diamond
from pullcord.printing.chart.sheets import TEXT
from pullcord.printing.chart.symbols import answer_label, box_shape, check_shape
from pullcord.safety.box import SignalWord

TITLES = {
    "short": "Look",
    "usual": "Measure the source coil",
    "long": "Look at every joint between the tank and the carburettor, by daylight, twice",
    "one word": "Donaudampfschifffahrtsgesellschaft" * 2,
}


def node(title: str, kind: Kind, signal: SignalWord | None = None) -> Node:
    """Return a symbol with a title, a question and, with a signal word, four notes."""
    said = (Paragraph(title, "title"), Paragraph("What does the winding read?", "detail"))
    return Node("step:x", kind, title, said, signal, note="2, 3, 9, 10" if signal else "")


def said(shape: Shape) -> str:
    """Return the text of a shape without spaces."""
    return "".join("".join(line.text.split()) for line in shape.lines)


@pytest.mark.parametrize("width_px", [190.0, 240.0, 300.0])
@pytest.mark.parametrize("title", TITLES.values(), ids=TITLES)
@pytest.mark.parametrize("signal", [None, SignalWord.WARNING], ids=["plain", "warning"])
def test_a_check_holds_its_text(title: str, signal: SignalWord | None, width_px: float) -> None:
    """Every corner of every line is inside the diamond, and no word is missing."""
    shape = check_shape(node(title, "decision", signal), width_px, TEXT)
    assert shape.width == width_px
    assert "".join(title.split()) in said(shape)
    for line in shape.lines:
        for y in (line.y - 0.7 * line.size, line.y + 0.15 * line.size):
            room = shape.width * (1 - 2 * abs(y) / shape.height)
            assert abs(line.x) + line.width / 2 <= room / 2 + 0.01


@pytest.mark.parametrize("kind", ["process", "cause", "hand-over", "done"])
@pytest.mark.parametrize("title", TITLES.values(), ids=TITLES)
def test_a_box_holds_its_text(title: str, kind: Kind) -> None:
    """Every line is inside, no word is missing, and the box is no wider than its room."""
    shape = box_shape(node(title, kind, SignalWord.DANGER), 150, TEXT)
    assert shape.width <= 150
    assert "".join(title.split()) in said(shape)
    assert all(abs(line.x) + line.width / 2 <= shape.width / 2 for line in shape.lines)
    assert all(abs(line.y) <= shape.height / 2 for line in shape.lines)


@pytest.mark.parametrize("title", TITLES.values(), ids=TITLES)
def test_a_diamond_is_as_low_as_it_can_be(title: str) -> None:
    """With any number of rows, a diamond lower by its step of search does not hold the text."""
    blocks = blocks_of(node(title, "decision"), 120, TEXT)
    _, height = low_diamond(blocks, 220, TEXT)
    steps = range(len(blocks), 40)
    lower = [
        rows
        for rows in steps
        if rows * TEXT.line_px < height - 3 and _holds(blocks, rows, 220, height - 3)
    ]
    assert lower == []


def _holds(blocks: tuple[object, ...], count: int, width: float, height: float) -> bool:
    """Fill the rows of a diamond greedily, word by word."""
    tops = [abs((n - count / 2) * TEXT.line_px) for n in range(count)]
    ends = [abs((n + 1 - count / 2) * TEXT.line_px) for n in range(count)]
    rooms = [
        width * (1 - 2 * max(top, end) / height) - TEXT.padding_px
        for top, end in zip(tops, ends, strict=True)
    ]
    row = -1
    for block in blocks:
        pen = None
        for _, word in block.words.pieces:  # type: ignore[attr-defined]
            longer = word if pen is None else pen + block.words.space_px + word  # type: ignore[attr-defined]
            if pen is not None and longer <= rooms[row]:
                pen = longer
                continue
            row, pen = row + 1, word
            if row >= count or word > rooms[row]:
                return False
    return row == count - 1


def test_answers_stand_below_each_other() -> None:
    """Two answers that lead the same way have a line each, and begin at the same place."""
    label = answer_label(("☐ above", "☐ open"), 84, TEXT)
    assert label is not None
    assert [line.text for line in label.lines] == ["☐ above", "☐ open"]
    assert len({round(line.x - line.width / 2, 6) for line in label.lines}) == 1
    assert answer_label((), 84, TEXT) is None
