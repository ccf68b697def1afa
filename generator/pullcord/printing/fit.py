"""The layout of a chart that prints largest.

Every style below is laid out and held against every frame; the largest effective type wins. A
style differs in how wide text may run, in arrangement, and in how much air it leaves.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from pullcord.drawing.chart import Chart
from pullcord.drawing.fit import geometry_of
from pullcord.drawing.geometry import Geometry
from pullcord.drawing.layout import Engine
from pullcord.drawing.shape import shape_of
from pullcord.drawing.style import Style
from pullcord.printing.paper import MM_PER_PX, Paper

LEAST_TYPE_PT = 7.0
"""No type on a sheet is smaller: it must be read at arm's length in poor light."""
MOST_TYPE_PT = 11.0
"""A small chart is not blown up beyond this."""
PT_PER_PX = 0.75

_CLOSE = Style(line_px=19, padding_px=7, least_height_px=30, beside_px=14, below_px=15, margin_px=2)
STYLES: tuple[Style, ...] = tuple(
    replace(_CLOSE, arrangement=arrangement, column_px=column, answer_px=answer, slope=slope)
    for arrangement in ("free", "column")
    for column, answer, slope in ((110, 80, 0.7), (150, 100, 0.6), (210, 130, 0.45))
)


@dataclass(frozen=True)
class Frame:
    """The room for a chart on a sheet. Lengths in mm."""

    paper: Paper
    width_mm: float
    height_mm: float


@dataclass(frozen=True)
class Fitted:
    """A chart's geometry on a sheet."""

    geometry: Geometry
    frame: Frame
    mm_per_px: float

    @property
    def type_pt(self) -> float:
        """The size of the chart's smallest type as printed."""
        sizes = [line.size for node in self.geometry.nodes for line in node.shape.lines]
        return min(sizes) * self.mm_per_px / MM_PER_PX * PT_PER_PX


def fit_frames(chart: Chart, frames: Sequence[Frame], engine: Engine) -> Fitted:
    """Return the layout and frame with the largest type. Raises LayoutError as `lay_out` does."""
    drawn = [geometry_of(chart, style, engine) for style in STYLES]
    fitted = (_fit(geometry, frame) for geometry in drawn for frame in frames)
    return max(fitted, key=lambda one: (round(one.type_pt, 3), -one.geometry.height))


def is_readable(chart: Chart, frames: Sequence[Frame], engine: Engine) -> bool:
    """Say whether some style reaches 7 pt in some frame. Raises LayoutError as `lay_out` does."""
    for style in STYLES:
        roomy = [frame for frame in frames if _has_room(chart, style, frame)]
        geometry = geometry_of(chart, style, engine) if roomy else None
        if geometry and any(_fit(geometry, f).type_pt >= LEAST_TYPE_PT for f in roomy):
            return True
    return False


def _has_room(chart: Chart, style: Style, frame: Frame) -> bool:
    """Say whether the symbols alone, at 7 pt, are no larger than the frame: a quick refusal."""
    mm_per_px = LEAST_TYPE_PT / (style.type_px * PT_PER_PX) * MM_PER_PX
    shapes = (shape_of(node, style) for node in chart.nodes)
    area_px2 = sum(shape.width * shape.height for shape in shapes)
    return area_px2 * mm_per_px**2 <= frame.width_mm * frame.height_mm


def _fit(geometry: Geometry, frame: Frame) -> Fitted:
    most = MOST_TYPE_PT / (STYLES[0].type_px * PT_PER_PX) * MM_PER_PX
    room = min(frame.width_mm / geometry.width, frame.height_mm / geometry.height)
    return Fitted(geometry, frame, min(room, most))
