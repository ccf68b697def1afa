"""What is typed and what is written meet, however a code is spaced."""

from __future__ import annotations

import pytest

from pullcord.pages.search.words import words_of

MEETS = [
    ("12V", "a 12 V battery"),
    ("12 V", "a 12V battery"),
    ("12v", "12\u00a0V"),
    ("P0301", "fault P-0301"),
    ("P-0301", "fault P0301"),
    ("p0301", "P 0301"),
    ("E12", "fitting E-12"),
    ("E-12", "fitting E12"),
    ("e 12", "E12"),
    ("8.5", "gap 8.5 mm"),
    ("31500-SB2", "part 31500-SB2"),
    ("SB2", "part 31500-SB2"),
    ("kuhler", "Kühler"),
    ("Straße", "straße"),
    ("10 kΩ", "10kΩ"),
]
PARTS = [
    ("P0301", "P0302"),
    ("E12", "E13 and 12 bolts"),
]


@pytest.mark.parametrize(("typed", "written"), MEETS, ids=[f"{a} in {b}" for a, b in MEETS])
def test_typed_is_found_in_written(typed: str, written: str) -> None:
    """Every word of what is typed is among the words of what is written."""
    assert set(words_of(typed)) <= set(words_of(written))


@pytest.mark.parametrize(("typed", "written"), PARTS, ids=[f"{a} in {b}" for a, b in PARTS])
def test_another_code_is_not_found(typed: str, written: str) -> None:
    """A code is not taken for its neighbour."""
    assert not set(words_of(typed)) <= set(words_of(written))


def test_neighbours_across_a_sentence_are_no_code() -> None:
    """Letters and figures with more than one sign between them stay two words."""
    assert "12v" not in set(words_of("use 12. V belts are dear"))
    assert "12v" not in set(words_of("12\nV"))
