"""What a reader needs before the first step: tools, time, hazards, which machines."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.model.procedure import Fits, Procedure
from pullcord.pages.caution import BoxView, box_views
from pullcord.pages.kit import Kit
from pullcord.pages.prose import plain
from pullcord.pages.step import tool_title
from pullcord.pages.times import minutes_to_an_end, say_minutes
from pullcord.safety.box import Box
from pullcord.safety.hazards import HAZARDS


@dataclass(frozen=True)
class ToolView:
    """One tool with what serves for less money."""

    title: str
    instead: str


def tool_views(procedure: Procedure) -> tuple[ToolView, ...]:
    """Return every tool the procedure lists or a step needs, in the order of the file."""
    needed = (tool for step in procedure.steps.values() for tool in step.needs)
    names = dict.fromkeys((*procedure.tools, *needed))
    return tuple(ToolView(tool_title(procedure, name), _instead(procedure, name)) for name in names)


def say_time(words: Mapping[str, str], procedure: Procedure) -> str:
    """Return how long it takes to know the cause: one time, or the least and the most."""
    least, most = (say_minutes(words, minutes) for minutes in minutes_to_an_end(procedure))
    if least == most:
        return words["time_one"].format(time=most)
    return words["time_range"].format(least=least, most=most)


def say_fits(words: Mapping[str, str], fits: Fits) -> tuple[str, ...]:
    """Return which machines the procedure is for, one line a property."""
    given = {"kind": fits.kind, "ignition": fits.ignition, "fuel": fits.fuel}
    given["strokes"] = fits.strokes
    lines = tuple(
        words[f"fits_{field}"].format(value=_either(words, [plain(value) for value in values]))
        for field, values in given.items()
        if values and "any" not in values
    )
    return lines or (words["fits_any"],)


def hazards_met(kit: Kit, hazards: tuple[str, ...]) -> tuple[BoxView, ...]:
    """Return every hazard of the procedure in a box of its own, gravest first."""
    return box_views(kit, (Box(HAZARDS[hazard].signal, (hazard,)) for hazard in hazards))


def things_ready(kit: Kit, asked: tuple[str, ...]) -> tuple[str, ...]:
    """Return what must be in place: what always must, then what the hazards ask for."""
    return tuple(kit.ready[name] for name in dict.fromkeys((*kit.standing.always_ready, *asked)))


def things_worn(kit: Kit, asked: tuple[str, ...]) -> tuple[str, ...]:
    """Return what is worn: what always is, then what the hazards ask for."""
    return tuple(kit.wear[name] for name in dict.fromkeys((*kit.standing.always_wear, *asked)))


def _either(words: Mapping[str, str], values: list[str]) -> str:
    if len(values) == 1:
        return values[0]
    return f"{', '.join(values[:-1])} {words['or']} {values[-1]}"


def _instead(procedure: Procedure, name: str) -> str:
    tool = procedure.tools.get(name)
    return (tool.instead or "") if tool else ""
