"""The caution notes of a sheet: what the signal words in its chart stand for, word for word.

Each hazard has one note, however many boxes speak of it; a symbol of the chart bears the gravest
signal word and the numbers of all its notes.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from pullcord.drawing.measure import text_width_px
from pullcord.drawing.wrap import Words, fill, measure_words
from pullcord.pages.caution import BoxView, box_views
from pullcord.pages.kit import Kit
from pullcord.printing.paper import MM_PER_PX, PT_PER_PX
from pullcord.safety.box import Box
from pullcord.safety.hazards import HAZARDS

TYPE_PT = 7.0
LINE_MM = 2.75
GAP_MM = 1.0
"""Below a note."""
COLUMN_GAP_MM = 4.0
COLUMN_MM = 62.0
"""About the width of a column."""
_MARK_EM = 1.4
"""Room for the safety alert symbol."""
_TYPE_PX = TYPE_PT / PT_PER_PX


@dataclass(frozen=True)
class Note:
    """One caution, as it is printed below a chart."""

    number: int
    word: str
    """The signal word."""
    has_alert_symbol: bool
    lines: tuple[str, ...]
    """The text, broken for its column; the first line begins behind number and signal word."""

    @property
    def height_mm(self) -> float:
        """With the gap below it."""
        return len(self.lines) * LINE_MM + GAP_MM


Columns = tuple[tuple[Note, ...], ...]


class NoteBook:
    """The notes of a chart, set in columns for whatever part of it stands on a sheet."""

    def __init__(self, kit: Kit, boxes: Mapping[str, tuple[Box, ...]]) -> None:
        """Number the hazards of all nodes, the gravest first."""
        self._boxes = boxes
        self._numbers = _numbers(boxes.values())
        self._views = {hazard: _view(kit, hazard) for hazard in self._numbers}
        self._set: dict[tuple[float, frozenset[str]], Columns] = {}

    @property
    def content(self) -> str:
        """Everything the notes say and of which nodes, to tell one book from another."""
        return repr([self._views, [(n, sorted(self._hazards((n,)))) for n in self._boxes]])

    def numbers_of(self, node: str) -> str:
        """Return the numbers of a node's notes, as they are printed in its symbol."""
        return _spans(sorted(self._numbers[hazard] for hazard in self._hazards((node,))))

    def columns(self, nodes: Iterable[str], width_mm: float) -> Columns:
        """Return the notes of the nodes in columns across a width."""
        key = width_mm, self._hazards(nodes)
        if key not in self._set:
            count = max(1, round(width_mm / COLUMN_MM))
            column_mm = (width_mm - COLUMN_GAP_MM * (count - 1)) / count
            notes = tuple(
                _note(self._views[hazard], number, column_mm)
                for hazard, number in self._numbers.items()
                if hazard in key[1]
            )
            self._set[key] = _even(notes, count)
        return self._set[key]

    def _hazards(self, nodes: Iterable[str]) -> frozenset[str]:
        held = (box for node in nodes for box in self._boxes.get(node, ()))
        return frozenset(hazard for box in held for hazard in box.hazards)


def height_mm(columns: Columns) -> float:
    """Return the height of the tallest column."""
    return max((sum(note.height_mm for note in column) for column in columns), default=0.0)


def _numbers(boxes: Iterable[tuple[Box, ...]]) -> Mapping[str, int]:
    met = {hazard for group in boxes for box in group for hazard in box.hazards}
    known = list(HAZARDS)
    ranked = sorted(met, key=lambda hazard: (-HAZARDS[hazard].signal, known.index(hazard)))
    return {hazard: number for number, hazard in enumerate(ranked, start=1)}


def _view(kit: Kit, hazard: str) -> BoxView:
    (view,) = box_views(kit, (Box(HAZARDS[hazard].signal, (hazard,)),))
    return view


def _spans(numbers: Sequence[int]) -> str:
    """Return numbers in words: `1, 3–6`."""
    spans: list[list[int]] = []
    for number in numbers:
        if spans and number == spans[-1][-1] + 1:
            spans[-1].append(number)
        else:
            spans.append([number])
    return ", ".join(
        f"{span[0]}–{span[-1]}" if len(span) > 2 else ", ".join(map(str, span)) for span in spans
    )


def _even(notes: tuple[Note, ...], count: int) -> Columns:
    """Return the notes in so many columns, the tallest as low as their order allows."""
    best: Columns = (notes,)
    while (tried := _filled(notes, count, height_mm(best) - 0.01)) is not None:
        best = tried
    return best + ((),) * (count - len(best))


def _filled(notes: tuple[Note, ...], count: int, most_mm: float) -> Columns | None:
    """Return the notes in columns no higher than that; None when they do not go in."""
    columns: list[list[Note]] = [[]]
    for note in notes:
        if sum(held.height_mm for held in columns[-1]) + note.height_mm > most_mm:
            columns.append([])
        columns[-1].append(note)
    filled = tuple(tuple(column) for column in columns)
    return filled if len(filled) <= count and height_mm(filled) <= most_mm else None


def _note(view: BoxView, number: int, width_mm: float) -> Note:
    (said,) = view.hazards
    text = " ".join(f"{said.hazard} {said.consequence} {said.avoid}".split())
    heading = text_width_px(f"{number} {view.word}", _TYPE_PX, "bold") + _MARK_EM * _TYPE_PX
    width_px = width_mm / MM_PER_PX - 1
    words = measure_words(text, width_px, _TYPE_PX, "regular")
    headed = Words((("", heading), *words.pieces), words.space_px)
    lines = fill(headed, [width_px] * len(headed.pieces)) or ()
    return Note(number, view.word, view.has_alert_symbol, (lines[0].strip(), *lines[1:]))
