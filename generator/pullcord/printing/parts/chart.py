"""A procedure's flowchart as a part of what is printed."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter

from pullcord.drawing.cache import keep_value
from pullcord.drawing.chart import Chart, OtherProcedure, chart_of
from pullcord.drawing.geometry import Geometry
from pullcord.pages.reading import chart_limits
from pullcord.printing.chart.notes import Note, NoteBook, height_mm
from pullcord.printing.chart.sheets import ChartJob, ChartSheets, flowchart_sheets
from pullcord.printing.chart.writing import Extra, for_writing
from pullcord.printing.press import Topic

_SHEETS = TypeAdapter(ChartSheets)
_CHART = TypeAdapter(Chart)
_GEOMETRY = TypeAdapter(Geometry)


def chart_part(topic: Topic) -> Mapping[str, Any]:
    """Return a procedure's flowchart as data for the template.

    Raises PullcordError when a step with its answers is too large for a sheet.
    """
    notes = NoteBook(topic.press.kit, topic.notes.boxes)
    frames = topic.frames("flowchart_title")
    job = ChartJob(
        chart=_chart(topic, notes),
        order=[f"step:{name}" for name in topic.posts.order.steps],
        notes=notes,
        frames=frames,
        other_sheet=topic.press.words["other_sheet"],
    )
    laid = _laid_out(job, topic.press.kit.settings.cache_folder)
    return {
        "kind": "flowchart",
        **frames[laid.frame].data(),
        "mm_per_px": laid.mm_per_px,
        "sheets": [
            {
                "geometry": _GEOMETRY.dump_python(sheet.geometry),
                "room_mm": sheet.room_mm,
                "notes": [[_note(note) for note in column] for column in sheet.notes],
                "notes_mm": height_mm(sheet.notes),
            }
            for sheet in laid.sheets
        ],
    }


def _note(note: Note) -> Mapping[str, Any]:
    return {**asdict(note), "height_mm": note.height_mm}


def _chart(topic: Topic, notes: NoteBook) -> Chart:
    posts = topic.posts
    others = {
        name: OtherProcedure(other.title, "") for name, other in posts.library.procedures.items()
    }
    chart = chart_of(posts.procedure, topic.notes.boxes, others)
    extras = dict(_extras(topic, notes, chart))
    alt = topic.press.words["flowchart_alt"].format(title=chart.title)
    return for_writing(chart, extras, alt)


def _extras(topic: Topic, notes: NoteBook, chart: Chart) -> Iterator[tuple[str, Extra]]:
    words, posts = topic.press.words, topic.posts
    for node in chart.nodes:
        kind, _, name = node.id.partition(":")
        step = posts.procedure.steps.get(name) if kind == "step" else None
        number = posts.order.numbers[node.id] if step else ""
        if step is None or step.reading is None:
            yield node.id, Extra(number, notes.numbers_of(node.id))
            continue
        limits = chart_limits(posts.words, step, step.reading, posts.subject)
        good = words["should_read"].format(limits=limits) if limits else ""
        yield node.id, Extra(number, notes.numbers_of(node.id), good, words["read_line"])


def _laid_out(job: ChartJob, folder: Path | None) -> ChartSheets:
    key = (
        "chart sheets",
        _CHART.dump_json(job.chart).decode(),
        json.dumps([job.order, job.other_sheet, job.notes.content]),
        repr([(frame.paper, frame.body_mm) for frame in job.frames]),
    )
    return keep_value(folder, key, _SHEETS, lambda: flowchart_sheets(job))
