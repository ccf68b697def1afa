"""The log's entries as walks through procedures: where each began, what was answered, how it ended.

A walk ends at a cause, at `done` or where it hands over. It begins anew when its first step is
done again; a step that is done again within a walk takes back what was answered from there on.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from pullcord.analysis.job.given import Given
from pullcord.analysis.job.noted import DONE, Noted, is_end
from pullcord.model.procedure import Procedure


@dataclass(frozen=True)
class Walk:
    """One time through a procedure, as far as it went."""

    procedure: str
    answers: tuple[tuple[str, str], ...] = ()
    """Steps that were done, each with its answer; "" where it asks nothing or nobody said."""
    at: str | None = None
    """The graph node it has come to; None when the last entry settled nothing."""
    is_remedied: bool = False
    """Whether the log says that the cause it found was put right."""
    entry: int = 0
    """The position of its last entry."""
    called_again: int | None = None
    """The position of a later entry that handed over to this procedure."""

    @property
    def is_over(self) -> bool:
        """Say whether it has come to an end."""
        return is_end(self.at)

    @property
    def is_passed(self) -> bool:
        """Say whether it came to `done`, and nothing has called for the procedure since."""
        return self.at == DONE and self.called_again is None


def walks_of(given: Given) -> Mapping[str, tuple[Walk, ...]]:
    """Return every walk by its procedure, the oldest first."""
    found: dict[str, list[Walk]] = {}
    for note in given.notes:
        entry = note.entry
        if note.procedure is not None and (entry.step or entry.cause or entry.answer):
            walks = found.setdefault(note.procedure.procedure, [])
            _add(walks, note, note.procedure)
            _call(found, note)
    return {name: tuple(walks) for name, walks in found.items()}


def _add(walks: list[Walk], note: Noted, procedure: Procedure) -> None:
    entry, last = note.entry, walks[-1] if walks else None
    is_same = last is not None and last.is_over and last.at == note.at and not entry.step
    if last is not None and is_same and last.called_again is None:
        # What was found is named once more, mostly because it has been put right by now.
        remedied = last.is_remedied or note.is_remedied
        walks[-1] = replace(last, is_remedied=remedied, entry=note.place)
        return
    if last is None or last.is_over or entry.step == procedure.start:
        last = Walk(procedure.procedure)
        walks.append(last)
    walks[-1] = replace(
        last,
        answers=_answers(last, note),
        at=note.at,
        is_remedied=note.is_remedied,
        entry=note.place,
    )


def _answers(walk: Walk, note: Noted) -> tuple[tuple[str, str], ...]:
    step = note.entry.step
    if step is None:
        return walk.answers
    names = [name for name, _ in walk.answers]
    kept = walk.answers[: names.index(step)] if step in names else walk.answers
    return (*kept, (step, note.answer or ""))


def _call(found: Mapping[str, list[Walk]], note: Noted) -> None:
    kind, _, name = (note.at or "").partition(":")
    if kind == "procedure" and found.get(name):
        found[name][-1] = replace(found[name][-1], called_again=note.place)
