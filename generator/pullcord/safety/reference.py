"""The vocabulary as Markdown tables, so that the guide cannot say anything else than the code."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from pullcord.safety.hazards import CALLS, HAZARDS
from pullcord.safety.vocabulary import AT_START, CONDITIONS, ROWS, Row


def render_verbs() -> str:
    """Return the table of all that may be declared and what it means."""
    return _table(
        ("In the file", "During the step", "From then on", "No longer"),
        (_verb_cells(row) for row in ROWS),
    )


def render_conditions() -> str:
    """Return the table of conditions: which are assumed, and which no procedure may end with."""
    return _table(
        ("Condition", "Before the first step", "Put right by", "May stay at the end"),
        (
            (
                condition.says,
                "assumed" if condition.id in AT_START else "",
                f"`{condition.put_right_by}`" if condition.put_right_by else "",
                "no" if condition.loose_end else "yes",
            )
            for condition in CONDITIONS.values()
            if condition.lasts
        ),
    )


def render_hazards() -> str:
    """Return the table of hazards: their signal words and what calls them up."""
    return _table(
        ("Hazard", "Signal word", "Called up when"),
        ((hazard.id, hazard.signal.name, _called_by(hazard.id)) for hazard in HAZARDS.values()),
    )


def _verb_cells(row: Row) -> tuple[str, ...]:
    return (
        f"`{row.verb}: {row.thing}`",
        _says(row.meets),
        _says(row.begins),
        _says(row.ends),
    )


def _called_by(hazard: str) -> str:
    calls = (call for call in CALLS if hazard in call.hazards)
    return "; ".join(
        " and ".join(CONDITIONS[each].says for each in CONDITIONS if each in call.all_of)
        for call in calls
    )


def _says(conditions: Sequence[str]) -> str:
    return "; ".join(CONDITIONS[each].says for each in conditions)


def _table(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    lines = [head, tuple("---" for _ in head), *rows]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)
