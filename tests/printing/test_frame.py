"""Head and foot of a sheet take the room their text needs."""

from __future__ import annotations

import pytest

from pullcord.drawing.measure import text_width_px
from pullcord.printing.frame import Frame, Said
from pullcord.printing.lines import break_lines
from pullcord.printing.paper import MM_PER_PX, PT_PER_PX, on_its_side, upright

SHORT = Said("Title", "It does not start.", "", ("Built on 2026-03-01",), ("Read the manual.",))
LONG = Said(
    "A title " * 15,
    "A symptom that goes on. " * 50,
    "A machine " * 12,
    ("Built " * 40,),
    SHORT.deferral,
)


@pytest.mark.parametrize("text", ["", "one", "two words", "word " * 80, "x" * 300])
@pytest.mark.parametrize("width_mm", [30.0, 90.0])
def test_lines_hold_the_text_and_stay_within_the_width(text: str, width_mm: float) -> None:
    """By the typeface's own measures, at any length."""
    lines = break_lines(text, width_mm, 9, "bold")
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    for line in lines:
        assert text_width_px(line, 9 / PT_PER_PX, "bold") * MM_PER_PX <= width_mm


def test_longer_text_takes_more_room() -> None:
    """What is below the head begins further down, and what is above the foot ends further up."""
    short, long = Frame(SHORT, upright("a4")), Frame(LONG, upright("a4"))
    assert long.head_mm > short.head_mm
    assert long.foot_mm > short.foot_mm
    assert long.body_mm[1] < short.body_mm[1]
    assert long.body_mm[1] > 150


def test_a_lying_sheet_is_wider_and_lower() -> None:
    """The same text on the same paper."""
    upright_mm, lying_mm = (
        Frame(SHORT, upright("a4")).body_mm,
        Frame(SHORT, on_its_side("a4")).body_mm,
    )
    assert lying_mm[0] > upright_mm[0]
    assert lying_mm[1] < upright_mm[1]
