"""All steps and remedies of a procedure in words, cautions first, as a part of what is printed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from pullcord.model.procedure import Procedure
from pullcord.pages.before import say_fits, say_time, things_ready, things_worn, tool_views
from pullcord.pages.caution import BoxView
from pullcord.pages.reading import ReadingView
from pullcord.pages.step import CauseView, StepView, cause_view, step_view
from pullcord.pages.way import Way
from pullcord.printing.press import Topic

Data = Mapping[str, Any]
_TASKS = ("before_title", "ready_title", "wear_title", "tools_title")
_SHORT_CHARACTERS, _SHORT_PIECES = 1400, 24
"""So little text takes less than half a sheet however it breaks: some 60 characters fill a line of
4 mm, and 2 mm stand around a piece. Whether it fits need not be measured, which is to set it twice.
"""
_TITLES = ("before", "steps", "remedies", "walk_away")


def step_part(topic: Topic) -> Data:
    """Return the steps and remedies of a procedure as data for the template."""
    frame, _ = topic.frames("steps_title")
    kit, posts, notes = topic.press.kit, topic.posts, topic.notes
    steps = [step_view(kit, posts, name, notes) for name in posts.order.steps]
    causes = [cause_view(kit, posts, name, notes) for name in posts.order.causes]
    return {
        "kind": "steps",
        **frame.data(),
        "before": _before(topic),
        "steps": [_sized(_step(kit.words, view)) for view in steps],
        "causes": [_sized(_cause(kit.words, view)) for view in causes],
        "titles": {key: kit.words[f"{key}_title"] for key in _TITLES},
        "why": kit.words["why_title"],
        "proves": _proof(kit.words, posts.procedure),
        "walk_away": kit.standing.walk_away,
    }


def _proof(words: Mapping[str, str], procedure: Procedure) -> Sequence[str]:
    return (words["done_proves"], procedure.proves) if procedure.proves else ()


def box_data(box: BoxView) -> Data:
    """Return a caution box as data for the template."""
    return {
        "word": box.word,
        "level": box.level,
        "has_alert_symbol": box.has_alert_symbol,
        "signs": [{"file": sign.file, "means": sign.means} for sign in box.signs],
        "hazards": [
            {"hazard": said.hazard, "rest": f"{said.consequence} {said.avoid}"}
            for said in box.hazards
        ],
    }


def _before(topic: Topic) -> list[list[Data]]:
    """Return what is to know and to do before the first step: titled lists, in two columns."""
    kit, procedure, notes = topic.press.kit, topic.posts.procedure, topic.notes
    words = kit.words
    tools = [
        f"{tool.title}. {words['instead']} {tool.instead}" if tool.instead else tool.title
        for tool in tool_views(procedure)
    ]
    left = {
        "fits_title": say_fits(words, procedure.fits),
        "time_title": (say_time(words, procedure),),
        "before_title": (*kit.standing.before, *procedure.before),
        "ready_title": things_ready(kit, notes.before_start.ready),
    }
    right = {
        "wear_title": things_worn(kit, notes.before_start.wear),
        "tools_title": tools,
        "mistakes_title": procedure.mistakes,
    }
    return [[_list(words, *pair) for pair in column.items() if pair[1]] for column in (left, right)]


def _list(words: Mapping[str, str], key: str, items: Sequence[str]) -> Data:
    return {"title": words[key], "items": items, "is_task": key in _TASKS}


def _sized(data: Data) -> Data:
    """Return a step or remedy with whether it is surely short."""
    texts = list(_texts(data))
    is_short = len(texts) <= _SHORT_PIECES and sum(map(len, texts)) <= _SHORT_CHARACTERS
    return {**data, "is_short": is_short and not data.get("reading")}


def _texts(data: Any) -> Iterator[str]:
    if isinstance(data, str):
        yield data
    elif isinstance(data, Mapping):
        yield from (text for key, part in data.items() if key != "signs" for text in _texts(part))
    elif isinstance(data, (list, tuple)):
        yield from (text for part in data for text in _texts(part))


def _step(words: Mapping[str, str], view: StepView) -> Data:
    needs = f"{words['needs_label']} {', '.join(view.needs)}" if view.needs else ""
    return {
        "label": view.label,
        "title": view.title,
        "boxes": [box_data(box) for box in view.boxes],
        "instruction": view.instruction,
        "facts": _facts(
            f"{words['time_label']} {view.minutes}", needs, _source(words, view.source)
        ),
        "reading": _reading(words, view.reading) if view.reading else None,
        "ask": view.ask,
        "answers": [_answer(way) for way in view.answers],
        "why": view.why,
    }


def _cause(words: Mapping[str, str], view: CauseView) -> Data:
    minutes = f"{words['time_label']} {view.minutes}" if view.minutes else ""
    parts = f"{words['parts_label']} {view.parts}" if view.parts else ""
    return {
        "label": view.label,
        "title": view.title,
        "boxes": [box_data(box) for box in view.boxes],
        "instruction": view.remedy,
        "facts": _facts(minutes, parts, _source(words, view.source)),
    }


def _reading(words: Mapping[str, str], view: ReadingView) -> Data:
    probes = [(one.label, _spaced(one.place, one.wire, one.plug)) for one in view.probes]
    lines = [(words["reading_quantity"], _spaced(view.quantity, view.dial)), *probes]
    return {
        "lines": lines,
        "limits_label": words["reading_limits"],
        "limits": view.limits,
        "origin": _facts(view.origin, _source(words, view.source), view.missing),
        "read_label": words["reading_read"],
        "bands_title": view.bands_title,
        "bands": [(band.shows, band.mark, band.verdict, band.answers) for band in view.bands],
        "close_says": view.close_says,
        "temperatures": [(each.celsius, each.limits) for each in view.temperatures],
        "temperatures_say": view.temperatures_say,
        "keep_in_mind": [*view.sheet_note, *view.keep_in_mind],
    }


def _answer(way: Way) -> Data:
    shown = f" ({way.shows})" if way.shows else ""
    return {"said": f"{way.said}{shown}", "label": way.label, "title": way.title}


def _source(words: Mapping[str, str], source: str) -> str:
    return f"{words['source_label']} {source}" if source else ""


def _facts(*facts: str) -> list[str]:
    return [fact for fact in facts if fact]


def _spaced(*parts: str) -> str:
    return ", ".join(part for part in parts if part)
