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
from pullcord.printing.chart.rows import Row, Rows, rows_of
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
    is_squeezed: bool
    """Whether its type is smaller than the width would let it be."""


def flowchart_sheets(job: ChartJob) -> ChartSheets:
    """Return the sheets of a procedure's chart, with type of 7 pt or more.

    Raises PullcordError when a single step with its answers does not fit a sheet.
    """
    search = _Search(job)
    for frame in job.frames:
        for strips in STRIPS:
            search.go_on(frame, strips)
    if search.best is None:
        raise PullcordError(
            f"the flowchart of `{job.chart.name}` cannot be printed: one of its checks has more "
            "answers than a sheet has room for, so take larger paper or ask in two steps"
        )
    best = search.best
    drawn = tuple(_drawn(job, best))
    return ChartSheets(job.frames.index(best.frame), mm_per_px(best.type_pt), drawn)


class _Search:
    """The best plan so far.

    Narrower strips print larger and are higher. So of the widths that need no more sheets than the
    widest, the narrowest is the best, and it is found by halving.
    """

    def __init__(self, job: ChartJob) -> None:
        self._job = job
        self._rows = rows_of(job.chart, job.order)
        self._stacks: dict[int, tuple[Stack, StripStyle] | None] = {}
        self.best: _Plan | None = None

    def go_on(self, frame: Frame, strips: int) -> None:
        """Try so many strips beside each other on a sheet."""
        widths = _worth_trying(frame, strips, _widths_px(self._job.frames))
        widest = self._try(frame, strips, widths[0]) if widths else None
        if widest is None or self._is_beaten(widest):
            return
        holds, fails = 0, len(widths)
        while fails - holds > 1:
            middle = (holds + fails) // 2
            plan = self._try(frame, strips, widths[middle])
            if plan is None or plan.is_squeezed or len(plan.sheets) > len(widest.sheets):
                fails = middle
            else:
                holds = middle

    def _try(self, frame: Frame, strips: int, width_px: int) -> _Plan | None:
        plan = self._plan(frame, strips, width_px)
        self.best = min(filter(None, (self.best, plan)), key=_cost, default=None)
        return plan

    def _is_beaten(self, plan: _Plan) -> bool:
        return self.best is not None and len(plan.sheets) > len(self.best.sheets)

    def _plan(self, frame: Frame, strips: int, width_px: int) -> _Plan | None:
        """Return a plan whose strips fill the width, or has the least type where only that fits."""
        if width_px not in self._stacks:
            self._stacks[width_px] = _stacked(self._rows, width_px)
        stacked = self._stacks[width_px]
        if stacked is None:
            return None
        stack, style = stacked
        filling_pt = _type_pt(frame, strips, width_px)
        for size_pt in (filling_pt, LEAST_TYPE_PT):
            with suppress(NoRoomError):
                sheets = divide(stack, strips, _room(self._job, stack, frame, size_pt))
                return _Plan(stack, style, frame, size_pt, sheets, size_pt < filling_pt)
        return None


def _stacked(rows: Rows, width_px: int) -> tuple[Stack, StripStyle] | None:
    """Return the rows in strips of a width; None where they have no room there."""
    style = strip_style(width_px, rows.rows, TEXT)
    if style is None:
        return None
    return stack_rows([size_row(row, style) for row in rows.rows], rows.order), style


def _worth_trying(frame: Frame, strips: int, widths_px: Sequence[int]) -> list[int]:
    """Return the widths that print neither too small nor narrower than the largest type needs."""
    sizes = {width: _type_pt(frame, strips, width) for width in widths_px}
    readable = [width for width in widths_px if sizes[width] >= LEAST_TYPE_PT]
    largest = [width for width in readable if sizes[width] == MOST_TYPE_PT]
    return [width for width in readable if width not in largest[1:]]


def _cost(plan: _Plan) -> tuple[int, float, float]:
    """Fewer sheets are better, then larger type, then wider strips: those are lower."""
    return len(plan.sheets), -plan.type_pt, -plan.style.width_px


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
