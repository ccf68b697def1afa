"""A procedure's flowchart on one sheet, or on as few as it can be read on.

Upright and lying paper, the number of strips side by side and their width are all tried. The
fewest sheets win, then the largest type. The layout engine of the screen's charts was tried as
well: in 30 cut-outs of the shipped procedures it never printed larger than strips do.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass

from pullcord.drawing.chart import Chart
from pullcord.drawing.geometry import Geometry
from pullcord.drawing.style import Style
from pullcord.errors import PullcordError
from pullcord.printing.chart.draw import SIDE_PX, draw_sheet
from pullcord.printing.chart.joints import join
from pullcord.printing.chart.notes import Columns, NoteBook, height_mm
from pullcord.printing.chart.row_size import StripStyle, size_row, strip_style
from pullcord.printing.chart.rows import Row, rows_of
from pullcord.printing.chart.split import NoRoomError, Run
from pullcord.printing.chart.strips import Room, Stack, StripSheet, divide, stack_rows
from pullcord.printing.frame import Frame
from pullcord.printing.paper import MM_PER_PX, PT_PER_PX

LEAST_TYPE_PT = 7.0
"""No type on a sheet is smaller: it must be read at arm's length in poor light."""
MOST_TYPE_PT = 11.0
"""A small chart is not blown up beyond this."""
TEXT = Style(line_px=19, padding_px=7, least_height_px=28)
WIDTHS_PX = (760, 690, 640, *range(600, 430, -10))
"""How wide a strip may be: the narrower, the larger its type prints and the higher it gets.

Those that fill a paper at the least type are tried as well.
"""
STRIPS = (1, 2, 3, 4, 5)
"""How many may stand on a sheet."""
BETWEEN_PX = 18.0
"""From one strip to the next."""
EDGE_PX = 9.0
"""Kept free between a strip and the notes below it."""


@dataclass(frozen=True)
class ChartSheet:
    """One sheet of a flowchart, everything on it decided."""

    geometry: Geometry
    room_mm: float
    """The height of the room for the chart."""
    notes: Columns


@dataclass(frozen=True)
class ChartSheets:
    """A flowchart on paper."""

    frame: int
    """Which of the frames was taken, counted from 0."""
    mm_per_px: float
    sheets: tuple[ChartSheet, ...]

    @property
    def type_pt(self) -> float:
        """The size of the chart's type as printed."""
        return TEXT.type_px * self.mm_per_px / MM_PER_PX * PT_PER_PX


@dataclass(frozen=True)
class ChartJob:
    """A chart to be put on paper."""

    chart: Chart
    """As it is written on paper."""
    order: Sequence[str]
    """Its steps in the order in which they are numbered."""
    notes: NoteBook
    frames: tuple[Frame, ...]
    """Sheets of paper, any of which may be taken."""
    other_sheet: str
    """What stands beside a connector to another sheet, with `{sheets}` in it."""


@dataclass(frozen=True)
class _Plan:
    """One way to divide a chart."""

    stack: Stack
    style: StripStyle
    frame: Frame
    type_pt: float
    sheets: tuple[StripSheet, ...]


def flowchart_sheets(job: ChartJob) -> ChartSheets:
    """Return the sheets of a procedure's chart, with type of 7 pt or more.

    Raises PullcordError when a single step with its answers does not fit a sheet.
    """
    rows = rows_of(job.chart, job.order)
    search = _Search(job)
    for width_px in _widths_px(job.frames):
        style = strip_style(width_px, rows.rows, TEXT)
        if style is None or search.is_over:
            break
        search.go_on(stack_rows([size_row(row, style) for row in rows.rows], rows.order), style)
    if search.best is None:
        raise PullcordError(
            f"the flowchart of `{job.chart.name}` cannot be printed: one of its checks has more "
            "answers than a sheet has room for, so take larger paper or ask in two steps"
        )
    best = search.best
    drawn = tuple(_drawn(job, best))
    return ChartSheets(job.frames.index(best.frame), mm_per_px(best.type_pt), drawn)


class _Search:
    """The best plan so far, and the ways that may still lead to a better one.

    Strips are tried from the widest to the narrowest. Narrower ones print larger and are higher, so
    a way that needs more sheets than the best, or cannot print larger, is left from then on.
    """

    def __init__(self, job: ChartJob) -> None:
        self._job = job
        self._ways = [(frame, strips) for frame in job.frames for strips in STRIPS]
        self.best: _Plan | None = None

    @property
    def is_over(self) -> bool:
        return not self._ways

    def go_on(self, stack: Stack, style: StripStyle) -> None:
        for way in tuple(self._ways):
            type_pt = _type_pt(*way, style.width_px)
            if type_pt >= LEAST_TYPE_PT:
                plan = self._plan(stack, style, way, type_pt)
                self.best = min(filter(None, (self.best, plan)), key=_cost, default=None)
                if type_pt == MOST_TYPE_PT or self._is_beaten(plan):
                    self._ways.remove(way)

    def _is_beaten(self, plan: _Plan | None) -> bool:
        if self.best is None:
            return False
        return plan is None or len(plan.sheets) > len(self.best.sheets)

    def _plan(
        self, stack: Stack, style: StripStyle, way: tuple[Frame, int], type_pt: float
    ) -> _Plan | None:
        """Return a plan whose strips fill the width, or has the least type where only that fits."""
        frame, strips = way
        for size_pt in (type_pt, LEAST_TYPE_PT):
            with suppress(NoRoomError):
                sheets = divide(stack, strips, _room(self._job, stack, frame, size_pt))
                return _Plan(stack, style, frame, size_pt, sheets)
        return None


def _cost(plan: _Plan) -> tuple[int, float]:
    """Fewer sheets are better, then larger type."""
    return len(plan.sheets), -plan.type_pt


def mm_per_px(type_pt: float) -> float:
    """Return the scale at which a chart's type prints at a size."""
    return type_pt / (TEXT.type_px * PT_PER_PX) * MM_PER_PX


def _widths_px(frames: Sequence[Frame]) -> list[int]:
    """Return the widths to try, the widest first: it prints smallest and needs fewest sheets."""
    exact = {
        int((_least_type_px(frame) - 2 * SIDE_PX - (strips - 1) * BETWEEN_PX) / strips)
        for frame in frames
        for strips in STRIPS
    }
    fitting = {width for width in exact if WIDTHS_PX[-1] <= width <= WIDTHS_PX[0]}
    return sorted({*WIDTHS_PX, *fitting}, reverse=True)


def _least_type_px(frame: Frame) -> float:
    """Return the width of a sheet when its type has the least size."""
    return frame.body_mm[0] / mm_per_px(LEAST_TYPE_PT)


def _type_pt(frame: Frame, strips: int, width_px: float) -> float:
    """Return the type size at which so many strips fill the width of a sheet."""
    needed_px = strips * width_px + (strips - 1) * BETWEEN_PX + 2 * SIDE_PX
    return min(MOST_TYPE_PT, LEAST_TYPE_PT * _least_type_px(frame) / needed_px)


def _room(job: ChartJob, stack: Stack, frame: Frame, type_pt: float) -> Room:
    """Return how high a strip may be on a sheet with the notes its rows call for."""
    nodes = [_nodes(row.row) for row in stack.rows]
    scale = mm_per_px(type_pt)

    def room_px(run: Run) -> float:
        here = [node for row in nodes[run[0] : run[1]] for node in row]
        return _room_mm(frame, job.notes.columns(here, frame.body_mm[0])) / scale - EDGE_PX

    return room_px


def _room_mm(frame: Frame, notes: Columns) -> float:
    return max(1.0, frame.body_mm[1] - height_mm(notes))


def _nodes(row: Row) -> tuple[str, ...]:
    return (row.node.id, *(aside.edge.head for aside in row.asides if aside.end))


def _drawn(job: ChartJob, plan: _Plan) -> Iterator[ChartSheet]:
    joints = join([row.row for row in plan.stack.rows], plan.sheets)
    for sheet in plan.sheets:
        here = [node for row in plan.stack.rows[slice(*sheet.run)] for node in _nodes(row.row)]
        notes = job.notes.columns(here, plan.frame.body_mm[0])
        yield ChartSheet(
            draw_sheet(
                job.chart, plan.stack, sheet, joints, plan.style, BETWEEN_PX, job.other_sheet
            ),
            _room_mm(plan.frame, notes),
            notes,
        )
