"""A chart is cut for paper between its rows."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.drawing.geometry import Geometry, PlacedNode, Shape, TextLine
from pullcord.pages.sheets import (
    LEAST_TYPE_POINTS,
    LYING,
    MM_PER_PX,
    UPRIGHT,
    cuts,
    sheets_view,
    type_points,
)
from tests.pages.make import KIT


def chart(boxes: list[tuple[float, float]], width: float, height: float) -> Geometry:
    """Return a chart with symbols from one height to another."""
    line = TextLine("x", 0, 0, 10, 16, "regular", "title")
    nodes = tuple(
        PlacedNode(
            id=f"step:n{number}",
            kind="process",
            name="x",
            href=None,
            signal=None,
            shape=Shape("process", width / 2, (top + end) / 2, 80, end - top, (line,)),
        )
        for number, (top, end) in enumerate(boxes)
    )
    return Geometry("example", "Example", "", width, height, nodes, ())


def rows(*heights: float, gap: float = 30) -> Geometry:
    """Return a chart of rows with a gap between them."""
    boxes, y = [], 10.0
    for height in heights:
        boxes.append((y, y + height))
        y += height + gap
    return chart(boxes, 400, y)


@given(st.lists(st.integers(20, 180), min_size=1, max_size=12), st.integers(250, 600))
@settings(max_examples=100, deadline=None, print_blob=True)
def test_no_symbol_is_cut_and_no_piece_is_too_high(heights: list[int], most: int) -> None:
    """Whenever every symbol fits a sheet."""
    geometry = rows(*heights)
    found = cuts(geometry, most)
    assert (found[0], found[-1]) == (0, geometry.height)
    assert all(0 < end - top <= most for top, end in pairwise(found))
    for node in geometry.nodes:
        top, end = node.shape.y - node.shape.height / 2, node.shape.y + node.shape.height / 2
        assert not any(top < cut < end for cut in found)


@given(st.lists(st.integers(20, 180), min_size=1, max_size=9), st.integers(250, 600))
@settings(max_examples=40, deadline=None, print_blob=True)
def test_no_other_way_of_cutting_needs_fewer_sheets(heights: list[int], most: int) -> None:
    """Against the fewest pieces found by trying every place in every gap."""
    geometry = rows(*heights)
    ends = [int(node.shape.y + node.shape.height / 2) for node in geometry.nodes][:-1]
    # A cut may lie anywhere in a gap of 30, 4 away from either symbol.
    places = [0, *(y for end in ends for y in range(end + 4, end + 27)), int(geometry.height)]
    fewest = {0: 0}
    for n, place in enumerate(places[1:], 1):
        before = [fewest[p] for p in places[:n] if p in fewest and place - p <= most]
        if before:
            fewest[place] = min(before) + 1
    assert len(cuts(geometry, most)) - 1 == fewest[int(geometry.height)]


def test_what_is_higher_than_a_sheet_is_cut_all_the_same() -> None:
    """Nothing is lost, and it ends."""
    assert cuts(rows(900), 400) == (0, 400, 800, 940)


PAPERS = {
    "narrow and tall": (rows(*[60] * 20), "upright"),
    "short and not too wide": (chart([(10, 60)], 640, 70), "upright"),
    "wide": (chart([(10, 60)], 1400, 70), "lying"),
}


@pytest.mark.parametrize("case", PAPERS)
def test_the_paper_lies_down_only_when_the_type_would_be_too_small(case: str) -> None:
    """7 points and up, on as few sheets as that takes."""
    geometry, paper = PAPERS[case]
    assert sheets_view(geometry, KIT.words).paper == paper
    assert type_points(geometry, {"upright": UPRIGHT, "lying": LYING}[paper]) >= LEAST_TYPE_POINTS


def test_every_piece_fits_its_paper_and_says_which_it_is() -> None:
    """A window of the chart each, numbered, the chart's own shape kept."""
    geometry = rows(*[150] * 14)
    view = sheets_view(geometry, KIT.words)
    assert len(view.sheets) > 1
    assert [sheet.caption for sheet in view.sheets] == [
        f"Example: flowchart, sheet {n} of {len(view.sheets)}"
        for n in range(1, len(view.sheets) + 1)
    ]
    for sheet in view.sheets:
        x, _, width, height = map(float, sheet.view_box.split())
        assert (x, width) == (0, geometry.width)
        assert float(sheet.height.removesuffix("mm")) <= UPRIGHT.height_mm + 0.1
        scale = float(sheet.width.removesuffix("mm")) / width
        assert scale == pytest.approx(MM_PER_PX, rel=0.01)
        assert float(sheet.height.removesuffix("mm")) / height == pytest.approx(scale, rel=0.01)


@pytest.mark.parametrize("paper", [UPRIGHT, LYING], ids=lambda paper: paper.name)
def test_the_paper_is_no_larger_than_a4_or_letter(paper: object) -> None:
    """ISO 216: A4 is 210 x 297 mm. Letter is 8.5 x 11 in. Margins as in the print stylesheet."""
    a4, letter = (210.0, 297.0), (215.9, 279.4)
    short, long = min(a4[0], letter[0]), min(a4[1], letter[1])
    room = (short - 34, long - 32) if paper is UPRIGHT else (long - 34, short - 32)
    heading_and_caption = 22
    assert paper.width_mm <= room[0]  # type: ignore[attr-defined]
    assert paper.height_mm + heading_and_caption <= room[1]  # type: ignore[attr-defined]
