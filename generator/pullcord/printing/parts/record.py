"""The record sheet: every reading of a procedure, with room for three evenings."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pullcord.errors import PullcordError
from pullcord.model.procedure import Reading, Step
from pullcord.pages.reading import ReadingView, reading_view, resolve
from pullcord.pages.way import answers
from pullcord.printing.press import Topic

EVENINGS = 3


def record_part(topic: Topic) -> Mapping[str, Any]:
    """Return the record sheet of a procedure as data for the template.

    Raises PullcordError when the procedure takes no reading.
    """
    words, procedure = topic.press.words, topic.posts.procedure
    if not takes_readings(topic):
        raise PullcordError(
            f"`{procedure.procedure}` takes no reading, so there is nothing to record"
        )
    frame, _ = topic.frames("record_title")
    return {
        "kind": "record",
        **frame.data(),
        "meter": words["record_meter"].format(meter=topic.posts.subject.meter.title),
        "columns": [words["record_reading"], words["record_limits"]],
        "evenings": [words["record_evening"]] * EVENINGS,
        "rows": [
            _row(topic, name, step, step.reading)
            for name in topic.posts.order.steps
            if (step := procedure.steps[name]).reading
        ],
    }


def takes_readings(topic: Topic) -> bool:
    """Say whether there is anything to record."""
    return any(step.reading for step in topic.posts.procedure.steps.values())


def _row(topic: Topic, name: str, step: Step, reading: Reading) -> Mapping[str, Any]:
    kit, posts = topic.press.kit, topic.posts
    resolved = resolve(step, reading, posts.subject)
    ways = answers(posts, name, step)
    view = reading_view(kit, name, reading, resolved, posts.subject, ways)
    return {
        "number": posts.order.numbers[f"step:{name}"],
        "title": step.title,
        "places": [f"{probe.label}: {probe.place}" for probe in view.probes],
        "dial": view.dial,
        "limits": view.limits,
        "bands": [(band.mark, band.shows, band.verdict) for band in view.bands],
        "origin": _origin(view),
    }


def _origin(view: ReadingView) -> str:
    return view.missing or view.origin
