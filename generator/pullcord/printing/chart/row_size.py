"""How large each part of a row is when its strip has a given width. All lengths in px."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pullcord.drawing.chart import Node
from pullcord.drawing.geometry import Label, Shape
from pullcord.drawing.style import Style
from pullcord.printing.chart.rows import Aside, Row
from pullcord.printing.chart.symbols import (
    answer_label,
    box_shape,
    check_shape,
    signal_px,
    widest_word,
)

CIRCLE_PX = 30.0
"""Across a connector."""
ARROW_PX = 16.0
"""The least length of an arrow with its head."""
TRUNK_PX = 10.0
"""From the tip of a check to where its ways part."""
LANE_PX = 9.0
"""Between two arrows that run down beside each other."""
LANES = 2
"""How many may."""
GAP_PX = 8.0
"""Between ends that stand below each other."""
JOIN_PX = 12.0
"""Below a row's answer, where a way from further up joins."""
ANSWER_PX, END_PX = (76.0, 130.0), (104.0, 170.0)
"""The least and the most that answers and ends are given so that no word in them is broken."""
STEP_PX = 190.0
"""The least that steps are left."""
_ANSWER_SHARE = 0.16


@dataclass(frozen=True)
class StripStyle:
    """The measures of one strip."""

    width_px: float
    step_px: float
    """How wide a step's symbol may be; a check's always is."""
    answer_px: float
    """How wide an answer beside a step may run."""
    text: Style
    """Type, line spacing and padding."""

    @property
    def ends_px(self) -> float:
        """Where the ends begin, from the left."""
        return self.step_px + TRUNK_PX + self.answer_px + 1.5 * ARROW_PX

    @property
    def lanes_px(self) -> float:
        """Where the arrows that run down beside the ends begin, from the left."""
        return self.width_px - LANES * LANE_PX

    @property
    def end_px(self) -> float:
        """How wide an end may be."""
        return self.lanes_px - self.ends_px


@dataclass(frozen=True)
class SizedAside:
    """A way beside a step with its answer and its end."""

    aside: Aside
    label: Label | None
    end: Shape | None
    height_px: float


@dataclass(frozen=True)
class SizedRow:
    """A row whose parts have sizes, all still around (0, 0)."""

    row: Row
    shape: Shape
    asides: tuple[SizedAside, ...]
    down: Label | None
    height_px: float
    """Of the step and all that stands beside it."""


def strip_style(width_px: float, rows: Sequence[Row], text: Style) -> StripStyle | None:
    """Return the measures of a strip for these rows; None when it is too narrow for them.

    Answers and ends get what their longest words need, steps the rest up to half the strip.
    """
    asides = [aside for row in rows for aside in row.asides]
    answers = [answer for aside in asides for answer in aside.edge.answers]
    ends = [part.text for aside in asides if aside.end for part in aside.end.paragraphs]
    answer = _between(widest_word(answers, text, "regular"), ANSWER_PX)
    answer = max(answer, _ANSWER_SHARE * width_px)
    signals = [signal_px(aside.end, text) for aside in asides if aside.end]
    widest = max(widest_word(ends, text, "bold"), *signals, 0.0)
    end = _between(widest + 2 * text.padding_px, END_PX)
    step = width_px - TRUNK_PX - answer - 1.5 * ARROW_PX - end - LANES * LANE_PX
    if step < STEP_PX:
        return None
    return StripStyle(width_px, min(width_px / 2, step), answer, text)


def size_row(row: Row, style: StripStyle) -> SizedRow:
    """Measure a row."""
    shape = _step(row.node, style)
    asides = tuple(_aside(aside, style) for aside in row.asides)
    beside = sum(aside.height_px for aside in asides) + GAP_PX * max(0, len(asides) - 1)
    across = style.lanes_px - style.step_px / 2 - ARROW_PX
    down = answer_label(row.down.answers, across, style.text) if row.down else None
    return SizedRow(row, shape, asides, down, max(shape.height, beside))


def above_px(above: SizedRow, row: SizedRow) -> float:
    """Return the room between a row and the one above it in the same strip."""
    label = above.down.height if above.down else 0.0
    if row.row.is_joined:
        return max(label + JOIN_PX, CIRCLE_PX + 4) + ARROW_PX
    return max(label, 4) + ARROW_PX


def top_px(row: SizedRow) -> float:
    """Return the room above the first row of a strip, for the connector that leads to it."""
    return 0.0 if row.row.node.kind == "start" else CIRCLE_PX + ARROW_PX


def bottom_px(row: SizedRow) -> float:
    """Return the room below the last row of a strip, for the connector that leads on."""
    if row.row.down is None:
        return 0.0
    return (row.down.height if row.down else 4.0) + ARROW_PX + CIRCLE_PX


def _between(length_px: float, bounds_px: tuple[float, float]) -> float:
    return min(max(length_px + 1, bounds_px[0]), bounds_px[1])


def _step(node: Node, style: StripStyle) -> Shape:
    shape = check_shape if node.kind == "decision" else box_shape
    return shape(node, style.step_px, style.text)


def _aside(aside: Aside, style: StripStyle) -> SizedAside:
    label = answer_label(aside.edge.answers, style.answer_px, style.text)
    end = box_shape(aside.end, style.end_px, style.text) if aside.end else None
    height = max(label.height if label else 0.0, end.height if end else CIRCLE_PX)
    return SizedAside(aside, label, end, height)
