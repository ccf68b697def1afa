"""A procedure's flowchart on one sheet, or on as few as it can be read on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pullcord.drawing.chart import START, Chart
from pullcord.drawing.layout import Engine
from pullcord.model.procedure import Procedure
from pullcord.pages.kit import Kit
from pullcord.printing.fit import Fitted, Frame, fit_frames, is_readable
from pullcord.printing.note import (
    COLUMN_GAP_MM,
    Note,
    columns_of,
    height_mm,
    notes_for,
    number_boxes,
)
from pullcord.printing.paper import Paper, PaperName, on_its_side, upright
from pullcord.printing.paper_chart import chart_graph, for_writing, on_sheets
from pullcord.printing.split import reading_order, split_order
from pullcord.safety.box import Box

HEAD_MM = 21.0
"""Title, symptom, and the line for machine, name and date."""
FOOT_MM = 12.0
"""Revision, date, sheet number, and what goes before this sheet."""
NOTE_COLUMNS = 2


@dataclass(frozen=True)
class ChartSheet:
    """One sheet of a flowchart, everything on it decided."""

    fitted: Fitted
    notes: tuple[tuple[Note, ...], ...]
    """In columns."""


@dataclass(frozen=True)
class _Job:
    kit: Kit
    chart: Chart
    boxes: Mapping[str, tuple[Box, ...]]
    numbers: Mapping[Box, int]
    papers: tuple[Paper, ...]
    engine: Engine


def flowchart_sheets(
    kit: Kit,
    procedure: Procedure,
    chart: Chart,
    boxes: Mapping[str, tuple[Box, ...]],
    paper: PaperName,
) -> tuple[ChartSheet, ...]:
    """Return the sheets of a procedure's chart, none with type below 7 pt.

    Raises NoRoomError when a single symbol with its notes does not fit a sheet, LayoutError when
    the layout engine fails.
    """
    numbers = number_boxes(boxes.values())
    behind = {node: ", ".join(str(numbers[box]) for box in held) for node, held in boxes.items()}
    reads = frozenset(f"step:{name}" for name, step in procedure.steps.items() if step.reading)
    job = _Job(
        kit=kit,
        chart=for_writing(chart, reads, behind),
        boxes=boxes,
        numbers=numbers,
        papers=(upright(paper), on_its_side(paper)),
        engine=kit.settings.layout_engine,
    )
    sheets = _divide(job)
    return tuple(_sheet(job, part) for part in on_sheets(job.chart, sheets))


def _divide(job: _Job) -> Sequence[Sequence[str]]:
    whole = tuple(node.id for node in job.chart.nodes)
    if _is_readable(job, job.chart):
        return (whole,)
    order = reading_order(chart_graph(job.chart), START)

    def fits(nodes: tuple[str, ...]) -> bool:
        rest = tuple(node for node in whole if node not in set(nodes))
        part = on_sheets(job.chart, (nodes, rest))[0] if rest else job.chart
        return _is_readable(job, part)

    return split_order(order, fits)


def _is_readable(job: _Job, chart: Chart) -> bool:
    return is_readable(chart, [frame for frame, _ in _frames(job, chart)], job.engine)


def _sheet(job: _Job, chart: Chart) -> ChartSheet:
    notes = dict(_frames(job, chart))
    fitted = fit_frames(chart, list(notes), job.engine)
    return ChartSheet(fitted, notes[fitted.frame])


def _frames(job: _Job, chart: Chart) -> list[tuple[Frame, tuple[tuple[Note, ...], ...]]]:
    """Return the room for the chart on each paper, with the notes that take the rest."""
    here = {node.id for node in chart.nodes}
    used = {box for node, held in job.boxes.items() if node in here for box in held}
    numbers = {box: number for box, number in job.numbers.items() if box in used}
    notes = [_notes(job.kit, numbers, paper) for paper in job.papers]
    return [
        (_frame(paper, columns), columns) for paper, columns in zip(job.papers, notes, strict=True)
    ]


def _notes(kit: Kit, numbers: Mapping[Box, int], paper: Paper) -> tuple[tuple[Note, ...], ...]:
    gaps = COLUMN_GAP_MM * (NOTE_COLUMNS - 1)
    width = (paper.inner_width_mm - gaps) / NOTE_COLUMNS
    return columns_of(notes_for(kit, numbers, width), NOTE_COLUMNS)


def _frame(paper: Paper, notes: tuple[tuple[Note, ...], ...]) -> Frame:
    room = paper.inner_height_mm - HEAD_MM - FOOT_MM - height_mm(notes)
    return Frame(paper, paper.inner_width_mm, max(room, 1.0))
