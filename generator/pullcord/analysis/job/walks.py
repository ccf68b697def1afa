"""The log's entries as walks through procedures: where each began, what was answered, how it ended.

A walk ends at a cause, at `done` or where it hands over. It begins anew when its first step is
done again; a step that is done again within a walk takes back what was answered from there on.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from pullcord.analysis.job.given import Given
from pullcord.analysis.job.said import DONE, answer_in, is_end, is_remedied, leads_to
from pullcord.model.job import Entry


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
    for place, entry in given.entries():
        procedure = given.procedure_of(entry)
        if procedure is None or not (entry.step or entry.cause or entry.answer):
            continue
        walks = found.setdefault(procedure.procedure, [])
        _add(walks, given, place, entry, procedure.start)
        _call(found, walks[-1].at, place)
    return {name: tuple(walks) for name, walks in found.items()}


def _add(walks: list[Walk], given: Given, place: int, entry: Entry, start: str) -> None:
    at = leads_to(given, entry)
    last = walks[-1] if walks else None
    if last and last.is_over and last.at == at and not entry.step:
        # What was found is named once more, mostly because it has been put right by now.
        remedied = last.is_remedied or is_remedied(entry)
        walks[-1] = replace(last, is_remedied=remedied, entry=place)
        return
    if last is None or last.is_over or entry.step == start:
        walks.append(Walk(given.job.log[place].procedure or ""))
        last = walks[-1]
    answers = last.answers
    if entry.step:
        names = [step for step, _ in answers]
        kept = answers[: names.index(entry.step)] if entry.step in names else answers
        answers = (*kept, (entry.step, answer_in(given, entry) or ""))
    walks[-1] = replace(last, answers=answers, at=at, is_remedied=is_remedied(entry), entry=place)


def _call(found: Mapping[str, list[Walk]], at: str | None, place: int) -> None:
    kind, _, name = (at or "").partition(":")
    if kind == "procedure" and found.get(name):
        found[name][-1] = replace(found[name][-1], called_again=place)
