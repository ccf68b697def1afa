"""What counts as a figure that needs a source."""

from __future__ import annotations

import pytest

from pullcord.rules.procedure.figure_without_source import FIGURE

FIGURES = {
    "Set the gap to 0.7 mm.": "0.7 mm",
    "Between 200 and 300 ohm is good.": "300 ohm",
    "It should read 250 Ω.": "250 Ω",
    "Pump it up to 1.4 bar.": "1.4 bar",
    "Pump it up to 20 psi.": "20 psi",
    "Tighten to 12 Nm.": "12 Nm",
    "Tighten to 12 N·m.": "12 N·m",
    "It idles at 1500 rpm.": "1500 rpm",
    "At least 12.4 V is charged.": "12.4 V",
    "Mix it at 2 % oil.": "2 %",
    "Heat it to 80 °C.": "80 °C",
    "Fill 50ml.": "50ml",
}
OTHERS = [
    "Wait 10 minutes.",
    "Use a 10 mm spanner.",
    "Fit the 12 V battery.",
    "Turn it 2 turns out.",
    "Take 3 screws out.",
    "Set the meter to the 200 ohm range.",
    "Step 4 in the list.",
    "A 6 mm bolt holds it.",
    "2 in a row are enough.",
]


@pytest.mark.parametrize(("text", "figure"), FIGURES.items(), ids=FIGURES)
def test_a_figure_with_a_unit_is_found(text: str, figure: str) -> None:
    """Someone will set something by it."""
    found = FIGURE.search(text)
    assert found
    assert found.group() == figure


@pytest.mark.parametrize("text", OTHERS)
def test_other_numbers_are_let_be(text: str) -> None:
    """Times, counts, sizes of tools and names of things need no source."""
    assert FIGURE.search(text) is None
