"""A walk record taken into a job log: one entry for every answer of every round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pullcord.model.job import Entry, Job
from pullcord.model.known import DONE, check_answer, check_known, no_procedure
from pullcord.model.parse import parse_record
from pullcord.model.procedure import Library, Procedure
from pullcord.model.walk_record import WalkRecord, WalkRound
from pullcord.source.item import Data, Figure, Value

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

    `revision` is the procedure's present one, `now` the present minute as `2026-03-01 19:20`.
    """
    known = {identity(entry) for entry in job.log}
    found = {_identity(data): data for each in record.rounds for data in _entries(record, each)}
    new = [data for same, data in found.items() if same not in known]
    new.sort(key=lambda data: _text(data["date"]))
    procedure = library.procedures.get(record.walk)
    is_same = record.revision == revision
    refusals = dict.fromkeys(_refusals(record, job, library, new))
    odd = _odd_answers(new, procedure) if procedure else ()
    notes = list(_notes(record, job, new, is_same, now))
    if is_same:
        refusals |= dict.fromkeys(odd)
    else:
        notes += dict.fromkeys(f"{sentence}; it is taken in as it was given" for sentence in odd)
    return Taken(tuple(new), len(found) - len(new), tuple(notes), tuple(refusals))


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
    if record.walk not in library.procedures:
        yield no_procedure(record.walk, library)
        return
    for data in new:
        entry = parse_record(Entry, plain(data))
        if isinstance(entry, Entry):
            # Whether the step has such an answer depends on the revision: it is asked elsewhere.
            yield from check_known(entry.model_copy(update={"answer": None}), job, library)
        else:
            yield from (f"the answer of {_text(data['date'])}: {flaw.message}" for flaw in entry)


def _odd_answers(new: Sequence[Data], procedure: Procedure) -> Iterator[str]:
    for data in new:
        entry = parse_record(Entry, plain(data))
        if isinstance(entry, Entry):
            yield from check_answer(entry, procedure)


def _notes(
    record: WalkRecord, job: Job, new: Sequence[Data], is_same: bool, now: str
) -> Iterator[str]:
    if record.machine is None:
        yield f"the walk does not say on which machine it was made; it is taken for `{job.machine}`"
    if not is_same:
        yield (
            f"`{record.walk}` was changed since this walk; "
            "the answers are taken in as they were given"
        )
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
