"""Caution notes below a chart: numbers, columns, lines."""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest

from pullcord.drawing.measure import text_width_px
from pullcord.printing.chart.notes import LINE_MM, TYPE_PT, NoteBook, height_mm
from pullcord.printing.paper import MM_PER_PX, PT_PER_PX
from pullcord.safety.box import Box, SignalWord
from pullcord.safety.hazards import HAZARDS
from tests.printing.sheets import press, squeezed

BOXES = {
    f"step:{hazard}": (Box(HAZARDS[hazard].signal, (hazard,)),) for hazard in press().kit.cautions
}


def book() -> NoteBook:
    """Return the notes of every hazard there is, each of a step of its own."""
    return NoteBook(press().kit, BOXES)


def test_the_gravest_come_first() -> None:
    """Numbers go by signal word."""
    (column,) = book().columns(BOXES, 60)
    words = [SignalWord[note.word] for note in column]
    assert words == sorted(words, reverse=True)
    assert [note.number for note in column] == list(range(1, len(BOXES) + 1))


def test_a_note_says_all_of_its_caution() -> None:
    """Hazard, consequence and what avoids it, in that order."""
    (column,) = book().columns(BOXES, 60)
    said = {squeezed(" ".join(note.lines)) for note in column}
    wanted = press().kit.cautions.values()
    assert said == {squeezed(f"{c.hazard}{c.consequence}{c.avoid}") for c in wanted}


@pytest.mark.parametrize("width_mm", [40, 60, 180, 267])
def test_lines_stay_in_their_column(width_mm: float) -> None:
    """No line is wider than its column, by the typeface's own measures."""
    columns = book().columns(BOXES, width_mm)
    room_px = (width_mm - 4 * (len(columns) - 1)) / len(columns) / MM_PER_PX
    for note in (note for column in columns for note in column):
        widths = [text_width_px(line, TYPE_PT / PT_PER_PX, "regular") for line in note.lines]
        assert max(widths) <= room_px


def test_columns_are_as_even_as_can_be() -> None:
    """No other way to cut the row of notes into three has a lower tallest column."""
    nodes = list(BOXES)[:9]
    columns = book().columns(nodes, 180)
    notes = [note for column in columns for note in column]
    tallest = [
        max(sum(note.height_mm for note in notes[a:b]) for a, b in pairwise([0, *cuts, len(notes)]))
        for cuts in combinations(range(len(notes) + 1), 2)
    ]
    assert len(columns) == 3
    assert height_mm(columns) == pytest.approx(min(tallest))


def test_no_hazard_no_note() -> None:
    """A sheet without hazards gives all its room to the chart."""
    assert height_mm(book().columns([], 180)) == 0


@pytest.mark.parametrize(
    ("met", "said"),
    [((0,), "1"), ((0, 1), "1, 2"), ((0, 1, 2), "1–3"), ((0, 2, 3, 4, 6), "1, 3–5, 7")],
)
def test_numbers_are_said_short(met: tuple[int, ...], said: str) -> None:
    """Three and more in a row are said as a span."""
    ranked = sorted(BOXES, key=lambda node: int(book().numbers_of(node)))
    hazards = tuple(ranked[place].removeprefix("step:") for place in met)
    boxes = {**BOXES, "step:all": (Box(SignalWord.DANGER, hazards),)}
    assert NoteBook(press().kit, boxes).numbers_of("step:all") == said


def test_a_line_is_as_high_as_its_type_needs() -> None:
    """Lines of seven points stand 10 % apart or more."""
    assert LINE_MM >= 1.1 * TYPE_PT * 25.4 / 72
