"""Sizes of paper, holes and type against published standards."""

from __future__ import annotations

from math import isclose, sqrt

import pytest

from pullcord.printing.paper import MM_PER_PX, PAPERS, PT_PER_PX, on_its_side, upright

# ISO 216:2007: A0 has an area of 1 m² and sides as 1 to the square root of 2; each size is half
# the one before, cut across the long side, rounded down to whole millimetres.
A0_MM = (841, 1189)


def a_size(number: int) -> tuple[int, int]:
    """Halve A0 so many times."""
    short, long = A0_MM
    for _ in range(number):
        short, long = long // 2, short
    return short, long


def test_a0_is_the_iso_sheet() -> None:
    """The starting point itself, to the millimetre the standard rounds to."""
    short = 1000 / 2**0.25
    assert (round(short), round(short * sqrt(2))) == A0_MM


@pytest.mark.parametrize(("name", "number"), [("a4", 4), ("a3", 3)])
def test_a_sizes(name: str, number: int) -> None:
    """ISO 216."""
    sheet = upright(name)  # type: ignore[arg-type]
    assert (sheet.width_mm, sheet.height_mm) == a_size(number)


def test_letter() -> None:
    """ANSI/ASME Y14.1 size A: 8.5 by 11 inches; an inch is 25.4 mm (ISO 31, since 1959)."""
    sheet = upright("letter")
    assert isclose(sheet.width_mm, 8.5 * 25.4)
    assert isclose(sheet.height_mm, 11 * 25.4)


@pytest.mark.parametrize("name", PAPERS)
def test_a_punch_meets_no_ink(name: str) -> None:
    """ISO 838 (from memory): holes of 6 mm, their middle 12 mm from the edge, give or take 1 mm.

    Both ways of holding a sheet are punched along the long side.
    """
    hole_ends_mm = 12 + 1 + 6 / 2 + 0.25
    assert upright(name).left_mm > hole_ends_mm  # type: ignore[arg-type]
    assert on_its_side(name).top_mm > hole_ends_mm  # type: ignore[arg-type]


def test_points_and_pixels() -> None:
    """CSS Values and Units 3, 6.2: 1in = 2.54cm = 96px = 72pt."""
    assert isclose(96 * MM_PER_PX, 25.4)
    assert isclose(96 * PT_PER_PX, 72)
