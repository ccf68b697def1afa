"""Widths of text."""

from __future__ import annotations

import pytest

from pullcord.drawing.measure import advance_em, guess_em, text_width_px


def test_width_is_the_sum_of_the_advances() -> None:
    """Every character moves the pen by its own advance and nothing else does."""
    text = "AVAVA fi 4–12 kΩ"
    whole = text_width_px(text, 16, "regular")
    assert whole == pytest.approx(16 * sum(advance_em(c, "regular") for c in text))


def test_width_grows_with_the_type_size() -> None:
    """Twice the size is twice the width, whatever the weight."""
    for weight in ("regular", "bold"):
        small, large = text_width_px("Spark", 8, weight), text_width_px("Spark", 16, weight)
        assert large == pytest.approx(2 * small)


def test_bold_is_measured_as_bold() -> None:
    """A title is wider than the same words in plain type."""
    assert text_width_px("Known-good plug", 16, "bold") > text_width_px(
        "Known-good plug", 16, "regular"
    )


@pytest.mark.parametrize(
    ("character", "em"),
    [("ש", 0.65), ("ش", 0.65), ("世", 1.0), ("⚠", 1.25), ("🔥", 1.25), ("\u200d", 0.0)],
    ids=["hebrew", "arabic", "ideograph", "sign", "picture", "joiner"],
)
def test_guesses_characters_of_other_typefaces(character: str, em: float) -> None:
    """What our typeface lacks is measured by the stated rule."""
    assert guess_em(character) == em
    assert advance_em(character, "regular") == em


def test_an_accent_takes_no_room_of_its_own() -> None:
    """A combining accent stands on the letter before it."""
    assert text_width_px("e\u0301", 16, "regular") == text_width_px("e", 16, "regular")
