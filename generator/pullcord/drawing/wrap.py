"""Breaking text into lines by its measured width."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import inf

from pullcord.drawing.font import Weight
from pullcord.drawing.measure import text_width_px

_JOINTS = "-–—/.,:;_"
"""After these a word that is too long is broken rather than anywhere."""

_ROUNDING_PX = 0.01
"""A width summed letter by letter differs from that of the whole by far less."""


@dataclass(frozen=True)
class Words:
    """Text split where it may be broken, with the width of every piece in px."""

    pieces: tuple[tuple[str, float], ...]
    space_px: float

    @property
    def widest_px(self) -> float:
        """The width of the widest piece: no line can be narrower."""
        return max(width for _, width in self.pieces)


def measure_words(text: str, widest_px: float, size_px: float, weight: Weight) -> Words:
    """Return the words of a text; one that is wider than `widest_px` comes in several pieces."""
    words = (_pieces(word, widest_px, size_px, weight) for word in text.split(" "))
    pieces = tuple(piece for word in words for piece in word)
    return Words(pieces, text_width_px(" ", size_px, weight))


def fill(words: Words, rooms_px: Sequence[float]) -> tuple[str, ...] | None:
    """Return lines that each fit their own room, or None when the rooms do not hold the text."""
    starts = line_starts(words, rooms_px)
    return None if starts is None else lines_from(words, starts)


def line_starts(words: Words, rooms_px: Sequence[float]) -> list[int] | None:
    """Return the place of each line's first piece; None when the rooms do not hold the text.

    Whoever looks for the best rooms asks this of many: it writes no line.
    """
    starts: list[int] = []
    pen, room, count = 0.0, -inf, len(rooms_px)
    for place, (_, width) in enumerate(words.pieces):
        longer = pen + words.space_px + width
        if longer <= room:
            pen = longer
        elif len(starts) < count and width <= rooms_px[len(starts)]:
            room, pen = rooms_px[len(starts)], width
            starts.append(place)
        else:
            return None
    return starts


def lines_from(words: Words, starts: Sequence[int]) -> tuple[str, ...]:
    """Return the lines that begin at these pieces."""
    ends = (*starts[1:], len(words.pieces))
    return tuple(
        " ".join(piece for piece, _ in words.pieces[start:end])
        for start, end in zip(starts, ends, strict=True)
    )


def wrap_balanced(words: Words, widest_px: float) -> tuple[str, ...]:
    """Return as few lines as possible within `widest_px`, then as even in width as possible.

    A piece that is wider than that makes room for itself.
    """
    low, high = words.widest_px, max(widest_px, words.widest_px)
    starts = line_starts(words, [high] * len(words.pieces)) or []
    while high - low > 1:
        middle = (low + high) / 2
        tried = line_starts(words, [middle] * len(starts))
        if tried is None:
            low = middle
        else:
            high, starts = middle, tried
    return lines_from(words, starts)


def _pieces(
    word: str, widest_px: float, size_px: float, weight: Weight
) -> Iterator[tuple[str, float]]:
    rest = word
    if word and (whole_px := text_width_px(word, size_px, weight)) < widest_px - _ROUNDING_PX:
        yield word, whole_px  # Most words are no longer than a line.
        return
    while rest:
        end = _break_at(rest, widest_px, size_px, weight)
        yield rest[:end], text_width_px(rest[:end], size_px, weight)
        rest = rest[end:]


def _break_at(word: str, widest_px: float, size_px: float, weight: Weight) -> int:
    """Return how many characters make a piece: all, or up to a joint, or as many as fit."""
    pen, joint = 0.0, 0
    for number, character in enumerate(word):
        pen += text_width_px(character, size_px, weight)
        if pen > widest_px and number:
            return joint or number
        if character in _JOINTS:
            joint = number + 1
    return len(word)
