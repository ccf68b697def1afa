"""The one way to print a step or a remedy. Its caution boxes come in first and stand first.

Nobody can print an instruction without saying which boxes belong to it: both functions look
the boxes up themselves and fail when the procedure's hazards have not been worked out.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from pullcord.model.procedure import Procedure, Step
from pullcord.pages.address import anchor
from pullcord.pages.caution import BoxView, box_views
from pullcord.pages.kit import Kit, render
from pullcord.pages.prose import paragraphs, plain
from pullcord.pages.reading import ReadingView, reading_view
from pullcord.pages.times import say_minutes
from pullcord.pages.verdict import shown_by
from pullcord.pages.way import Signposts, Way, answers, reached_from
from pullcord.safety.box import Box
from pullcord.safety.notes import SafetyNotes

Boxes = Mapping[str, tuple[Box, ...]]
"""The boxes of every step and cause of a procedure, by graph node."""


@dataclass(frozen=True)
class StepView:
    """A step, every word of it decided."""

    id: str
    label: str
    title: str
    boxes: tuple[BoxView, ...]
    instruction: tuple[str, ...]
    why: tuple[str, ...]
    needs: tuple[str, ...]
    minutes: str
    source: str
    reading: ReadingView | None
    ask: str
    answers: tuple[Way, ...]
    stop_here: tuple[str, ...]
    """What to see to when one stops for the day after it."""
    reached_from: tuple[Way, ...]


@dataclass(frozen=True)
class CauseView:
    """A cause and its remedy, every word decided."""

    id: str
    label: str
    title: str
    boxes: tuple[BoxView, ...]
    remedy: tuple[str, ...]
    parts: str
    minutes: str
    source: str
    stop_here: tuple[str, ...]
    """What to see to when one stops for the day after it."""
    reached_from: tuple[Way, ...]
    again: str
    """The anchor of the first step, to prove the remedy."""


def render_step(kit: Kit, posts: Signposts, name: str, notes: SafetyNotes) -> Markup:
    """Print a step. Raises KeyError when nobody worked out its boxes."""
    return render(kit, "step", step_view(kit, posts, name, notes))


def render_cause(kit: Kit, posts: Signposts, name: str, notes: SafetyNotes) -> Markup:
    """Print a cause with its remedy. Raises KeyError when nobody worked out its boxes."""
    return render(kit, "cause", cause_view(kit, posts, name, notes))


def tool_title(procedure: Procedure, name: str) -> str:
    """Return what to ask for in a shop."""
    return procedure.tools[name].title if name in procedure.tools else plain(name)


def step_view(kit: Kit, posts: Signposts, name: str, notes: SafetyNotes) -> StepView:
    """Return a step as it is printed. Raises KeyError when nobody worked out its boxes."""
    node, step = f"step:{name}", posts.procedure.steps[name]
    reading, ways = _reading(kit, posts, name, step)
    return StepView(
        id=anchor(node),
        label=kit.words["way_step"].format(number=posts.order.numbers[node]),
        title=step.title,
        boxes=box_views(kit, notes.boxes[node]),
        instruction=paragraphs(step.do),
        why=paragraphs(step.why),
        needs=tuple(tool_title(posts.procedure, tool) for tool in step.needs),
        minutes=say_minutes(kit.words, step.minutes),
        source=step.source or "",
        reading=reading,
        ask=step.ask or (kit.words["ask_reading"] if step.reading else ""),
        answers=ways,
        stop_here=tuple(kit.walk_away[item] for item in notes.walk_away[node]),
        reached_from=reached_from(posts, node),
    )


def cause_view(kit: Kit, posts: Signposts, name: str, notes: SafetyNotes) -> CauseView:
    """Return a cause as it is printed. Raises KeyError when nobody worked out its boxes."""
    node, cause = f"cause:{name}", posts.procedure.causes[name]
    return CauseView(
        id=anchor(node),
        label=kit.words["way_cause"].format(number=posts.order.numbers[node]),
        title=cause.title,
        boxes=box_views(kit, notes.boxes[node]),
        remedy=paragraphs(cause.remedy),
        parts="" if cause.parts is None else f"{cause.parts} {kit.settings.currency}".strip(),
        minutes="" if cause.minutes is None else say_minutes(kit.words, cause.minutes),
        source=cause.source or "",
        stop_here=tuple(kit.walk_away[item] for item in notes.walk_away[node]),
        reached_from=reached_from(posts, node),
        again=f"#step-{posts.procedure.start}",
    )


def _reading(
    kit: Kit, posts: Signposts, name: str, step: Step
) -> tuple[ReadingView | None, tuple[Way, ...]]:
    """Return a step's reading, if it takes one, and its answers with what the display shows."""
    ways = answers(posts, name, step)
    if step.reading is None:
        return None, tuple(ways.values())
    resolved = posts.readings[name]
    shown = dict(shown_by(resolved))
    view = reading_view(kit, name, step.reading, resolved, posts.subject, ways)
    return view, tuple(
        replace(way, answer=answer, shows=shown.get(answer, "")) for answer, way in ways.items()
    )
