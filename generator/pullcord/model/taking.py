"""A walk record taken into a job log: one entry for every answer of every round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pullcord.model.job import Entry, Job
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.parse import parse_record
from pullcord.model.procedure import Library, Procedure
from pullcord.model.walk_record import WalkRecord, WalkRound
from pullcord.source.item import Data, Figure, Value

DONE = "done"
"""The answer of an entry that says its procedure was gone through to the end."""

Identity = tuple[str, str | None, str | None, str | None]
"""When, procedure, step and answer: two entries that agree in them are the same."""


@dataclass(frozen=True)
class Taken:
    """What a record gives a log. Where there is a refusal, nothing may be written."""

    entries: tuple[Data, ...]
    """New entries as plain data, the oldest first."""
    skipped: int
    """Entries that are in the log already."""
    notes: tuple[str, ...]
    """Sentences about what is odd but does no harm."""
    refusals: tuple[str, ...]
    """Sentences about what keeps the record from being taken in."""


def take_walk(record: WalkRecord, job: Job, library: Library, revision: str, now: str) -> Taken:
    """Return the entries of a record that are not in the log yet.

    `revision` is the procedure's present one, `now` the present minute as `2026-03-01 19:20`. Words
    of an answer that the procedure no longer has are kept as a note.
    """
    procedure = library.procedures.get(record.walk)
    is_same = record.revision == revision
    rows = [data for each in record.rounds for data in _entries(record, each)]
    odd = () if procedure is None else [data for data in rows if _is_odd(data, procedure)]
    if not is_same:
        rows = [_as_note(data) if data in odd else data for data in rows]
    known = {identity(entry) for entry in job.log}
    found = {_identity(data): data for data in rows}
    new = sorted(
        (data for same, data in found.items() if same not in known),
        key=lambda data: _text(data["date"]),
    )
    refusals = [*_refusals(record, job, library, new)]
    refusals += [_said_odd(data) for data in odd if is_same]
    notes = [*_notes(record, job, new, is_same, now)]
    notes += [f"{_said_odd(data)}; it is kept as a note" for data in odd if _as_note(data) in new]
    return Taken(
        tuple(new),
        len(found) - len(new),
        tuple(dict.fromkeys(notes)),
        tuple(dict.fromkeys(refusals)),
    )


def identity(entry: Entry) -> Identity:
    """Return what tells an entry from others."""
    return entry.date, entry.procedure, entry.step, entry.answer


def places_in(log: Sequence[Entry], dates: Sequence[str]) -> list[int]:
    """Return for each date how many entries of the log stand before it.

    That is behind the last entry that is not later; a day without a minute is not later than any
    minute of it, nor earlier.
    """
    return [
        max((at for at, entry in enumerate(log, 1) if not _is_later(entry.date, date)), default=0)
        for date in dates
    ]


def _is_later(left: str, right: str) -> bool:
    length = min(len(left), len(right))
    return left[:length] > right[:length]


def _entries(record: WalkRecord, one: WalkRound) -> Iterator[Data]:
    for position, answer in enumerate(one.answers, 1):
        data: dict[str, Value] = {
            "date": Figure(answer.when),
            "procedure": record.walk,
            "step": answer.step,
        }
        if answer.answer.strip():
            data["answer"] = answer.answer
        if answer.reading is not None:
            data["reading"] = answer.reading
            if record.shop_celsius is not None:
                data["celsius"] = Figure(str(record.shop_celsius))
        if one.at.kind == "cause" and position == len(one.answers):
            data["cause"] = one.at.name
        yield data
    if one.at.kind == "done":
        yield {"date": Figure(one.left), "procedure": record.walk, "answer": DONE}


def _refusals(record: WalkRecord, job: Job, library: Library, new: Sequence[Data]) -> Iterator[str]:
    if record.machine not in (None, job.machine):
        yield f"the walk was made on `{record.machine}`, but this is the log of `{job.machine}`"
    procedure = library.procedures.get(record.walk)
    if procedure is None:
        yield _no_procedure(record.walk, library)
        return
    for data in new:
        entry = parse_record(Entry, plain(data))
        if isinstance(entry, Entry):
            yield from _unknown_names(entry, procedure)
        else:
            yield from (f"the answer of {_text(data['date'])}: {flaw.message}" for flaw in entry)


def _no_procedure(name: str, library: Library) -> str:
    if name in library.unread:
        return f"the procedure `{name}` has errors: mend them first, `pullcord check` names them"
    near = did_you_mean(name, library.procedures, f"there are: {listed(library.procedures)}")
    return f"there is no procedure `{name}`; {near}"


def _unknown_names(entry: Entry, procedure: Procedure) -> Iterator[str]:
    for kind, name, known in (
        ("step", entry.step, procedure.steps),
        ("cause", entry.cause, procedure.causes),
    ):
        if name is not None and name not in known:
            near = did_you_mean(name, known, "it may have been renamed: mend the walk's file")
            yield f"`{procedure.procedure}` has no {kind} `{name}`; {near}"


def _is_odd(data: Data, procedure: Procedure) -> bool:
    """Whether a step that is there does not have the answer."""
    step = procedure.steps.get(_text(data.get("step", "")))
    return step is not None and "answer" in data and data["answer"] not in step.answers


def _said_odd(data: Data) -> str:
    return f"the step `{_text(data['step'])}` has no answer `{_text(data['answer'])}`"


def _as_note(data: Data) -> Data:
    kept = {key: value for key, value in data.items() if key != "answer"}
    return {**kept, "note": f"Answered at the time: {_text(data['answer'])}"}


def _notes(
    record: WalkRecord, job: Job, new: Sequence[Data], is_same: bool, now: str
) -> Iterator[str]:
    if record.machine is None:
        yield f"the walk does not say on which machine it was made; it is taken for `{job.machine}`"
    if not is_same:
        yield f"`{record.walk}` was changed since this walk"
    ahead = [data for data in new if _is_later(_text(data["date"]), now)]
    if ahead:
        last = _text(ahead[-1]["date"])
        yield f"the tablet's clock was ahead: the walk says {last}, and it is {now} now"


def plain(value: Value) -> object:
    """Return data as a reader of the file gives it: every scalar is text."""
    if isinstance(value, Figure):
        return value.text
    if isinstance(value, str):
        return value
    if isinstance(value, dict):
        return {key: plain(part) for key, part in value.items()}
    return [plain(part) for part in value]


def _identity(data: Data) -> Identity:
    date, procedure, step, answer = (
        None if key not in data else _text(data[key])
        for key in ("date", "procedure", "step", "answer")
    )
    return date or "", procedure, step, answer


def _text(value: Value) -> str:
    return value.text if isinstance(value, Figure) else str(value)
