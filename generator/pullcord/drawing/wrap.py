"""Breaking text into lines by its measured width."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pullcord.drawing.font import Weight
from pullcord.drawing.measure import text_width_px

_JOINTS = "-–—/.,:;_"
"""After these a word that is too long is broken rather than anywhere."""


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
    lines: list[list[str]] = []
    pen = 0.0
    for word, width in words.pieces:
        longer = pen + words.space_px + width
        if lines and longer <= rooms_px[len(lines) - 1]:
            lines[-1].append(word)
            pen = longer
        elif len(lines) < len(rooms_px) and width <= rooms_px[len(lines)]:
            lines.append([word])
            pen = width
        else:
            return None
    return tuple(" ".join(line) for line in lines)


def wrap_balanced(words: Words, widest_px: float) -> tuple[str, ...]:
    """Return as few lines as possible within `widest_px`, then as even in width as possible.

    A piece that is wider than that makes room for itself.
    """
    low, high = words.widest_px, max(widest_px, words.widest_px)
    lines = fill(words, [high] * len(words.pieces)) or ()
    while high - low > 1:
        middle = (low + high) / 2
        tried = fill(words, [middle] * len(lines))
        if tried is None:
            low = middle
        else:
            high, lines = middle, tried
    return lines


def _pieces(
    word: str, widest_px: float, size_px: float, weight: Weight
) -> Iterator[tuple[str, float]]:
    rest = word
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
