"""The caution notes of a sheet: what the signal words in its chart stand for, word for word."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from pullcord.drawing.wrap import measure_words, wrap_balanced
from pullcord.pages.caution import box_views
from pullcord.pages.kit import Kit
from pullcord.printing.paper import MM_PER_PX
from pullcord.safety.box import Box

TYPE_PT = 7.5
LINE_MM = 3.2
GAP_MM = 1.2
COLUMN_GAP_MM = 5.0


@dataclass(frozen=True)
class Note:
    """One caution, as it is printed below a chart."""

    number: int
    word: str
    """The signal word."""
    has_alert_symbol: bool
    lines: tuple[str, ...]
    """The text, broken for its column; the first line is short by the heading's room."""

    @property
    def height_mm(self) -> float:
        """With the gap below it."""
        return (len(self.lines) + 1) * LINE_MM + GAP_MM


def number_boxes(boxes: Iterable[tuple[Box, ...]]) -> Mapping[Box, int]:
    """Return a number for each different box, the gravest first."""
    different = {box for group in boxes for box in group}
    ranked = sorted(different, key=lambda box: (-box.signal, box.hazards))
    return {box: number for number, box in enumerate(ranked, start=1)}


def notes_for(kit: Kit, numbers: Mapping[Box, int], width_mm: float) -> tuple[Note, ...]:
    """Return the notes, broken into lines for a column of the given width."""
    return tuple(_note(kit, box, number, width_mm) for box, number in numbers.items())


def columns_of(notes: tuple[Note, ...], count: int) -> tuple[tuple[Note, ...], ...]:
    """Return the notes in columns read from the left, as even in height as their order allows."""
    total = sum(note.height_mm for note in notes)
    columns: list[list[Note]] = [[] for _ in range(count)]
    height, at = 0.0, 0
    for note in notes:
        if height + note.height_mm / 2 > total / count * (at + 1) and at + 1 < count:
            at += 1
        columns[at].append(note)
        height += note.height_mm
    return tuple(tuple(column) for column in columns)


def height_mm(columns: tuple[tuple[Note, ...], ...]) -> float:
    """Return the height of the tallest column."""
    return max((sum(note.height_mm for note in column) for column in columns), default=0.0)


def break_lines(text: str, width_mm: float, type_pt: float = TYPE_PT) -> tuple[str, ...]:
    """Return a text in lines no wider than the width at the given size."""
    width_px = width_mm / MM_PER_PX
    words = measure_words(" ".join(text.split()), width_px, type_pt / 0.75, "regular")
    return wrap_balanced(words, width_px)


def _note(kit: Kit, box: Box, number: int, width_mm: float) -> Note:
    (view,) = box_views(kit, (box,))
    said = (f"{c.hazard} {c.consequence} {c.avoid}" for c in view.hazards)
    lines = tuple(line for text in said for line in break_lines(text, width_mm - 1))
    return Note(number, view.word, view.has_alert_symbol, lines)
