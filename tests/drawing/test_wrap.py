"""Breaking text into lines."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.drawing.measure import text_width_px
from pullcord.drawing.wrap import fill, measure_words, wrap_balanced

TEXTS = st.lists(st.text("aWi-Ω.", min_size=1, max_size=40), min_size=1, max_size=12).map(" ".join)


def width(line: str) -> float:
    """Return the width of a line as the tests below wrap it."""
    return text_width_px(line, 16, "regular")


@settings(max_examples=100, deadline=None, print_blob=True)
@given(text=TEXTS, widest=st.floats(40, 400))
def test_no_line_is_too_wide_and_no_character_is_lost(text: str, widest: float) -> None:
    """Wrapping only ever puts breaks in, and each line keeps within the width."""
    lines = wrap_balanced(measure_words(text, widest, 16, "regular"), widest)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert all(width(line) <= widest + 0.01 for line in lines)


@settings(max_examples=50, deadline=None, print_blob=True)
@given(text=TEXTS)
def test_balancing_costs_no_line(text: str) -> None:
    """The even lines are as few as those of filling one line after the other."""
    words = measure_words(text, 180, 16, "regular")
    greedy = fill(words, [180.0] * 1000)
    assert greedy is not None
    assert len(wrap_balanced(words, 180)) == len(greedy)


def test_lines_are_even() -> None:
    """Two lines share the words rather than leave one behind."""
    words = measure_words("Fit a known-good plug in the cap", 200, 16, "regular")
    assert wrap_balanced(words, 200) == ("Fit a known-good", "plug in the cap")


@pytest.mark.parametrize(
    ("word", "pieces"),
    [
        ("ignition-unit.trigger-wire", ("ignition-unit.", "trigger-wire")),
        ("supercalifragilistic", ("supercalifragili", "stic")),
        ("short", ("short",)),
    ],
    ids=["at joints", "anywhere", "not at all"],
)
def test_long_words_are_broken(word: str, pieces: tuple[str, ...]) -> None:
    """A word that fits no line is broken after a joint if it has one in reach."""
    found = measure_words(word, 100, 16, "regular").pieces
    assert tuple(piece for piece, _ in found) == pieces


def test_fill_gives_up_when_a_room_is_too_small() -> None:
    """Rooms may differ; a text that they do not hold is not half written."""
    words = measure_words("one two three", 400, 16, "regular")
    one, two, three = (width(word) for word in ("one", "two", "three"))
    assert fill(words, [one, two, three]) == ("one", "two", "three")
    assert fill(words, [one, two]) is None
    assert fill(words, [one, two, three - 1]) is None
