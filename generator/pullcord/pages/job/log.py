"""The log, entry by entry, in words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from pullcord.analysis.job.report import JobReport
from pullcord.model.action import Action
from pullcord.model.job import Entry
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library
from pullcord.pages.address import file_link, job_uri, photo_uri
from pullcord.pages.job.checks import step_link
from pullcord.pages.job.words import say_money, say_things, stage_titles
from pullcord.pages.kit import Kit
from pullcord.pages.machine_page import value_title
from pullcord.pages.prose import paragraphs
from pullcord.pages.subject import Subject
from pullcord.pages.times import say_minutes

DONE = "done"
"""What stands for an answer when a procedure was gone through to its end."""
VERBS = (*Action.model_fields, "drains", "fills")
"""What an entry can have done to the machine, in the order it is told."""


@dataclass(frozen=True)
class PhotoView:
    """A picture that goes with the site."""

    href: str
    alt: str


@dataclass(frozen=True)
class EntryView:
    """One entry."""

    date: str
    title: str
    """What was followed or read; empty when neither."""
    href: str
    """The step on the machine's page; empty for none."""
    did: tuple[str, ...]
    lines: tuple[str, ...]
    """Answer, reading, what was found, done to the machine, paid and proved."""
    note: tuple[str, ...]
    photo_path: str
    """Where the picture lies, in words; empty for none."""
    photo: PhotoView | None
    """None when it does not go with the site."""


@dataclass(frozen=True)
class Told:
    """What entries are worded with."""

    kit: Kit
    library: Library
    subject: Subject
    report: JobReport
    photos: frozenset[str]
    """The pictures that go with the site, as the log names them."""


def log_view(told: Told) -> tuple[EntryView, ...]:
    """Return every entry, the newest first."""
    return tuple(_entry(told, entry) for _, entry in told.report.newest_first)


def _entry(told: Told, entry: Entry) -> EntryView:
    words = told.kit.job
    uri = job_uri(told.report.job.job)
    return EntryView(
        date=entry.date,
        title=_title(told, entry),
        href=step_link(told.library, told.subject, uri, entry.procedure or "", entry.step or ""),
        did=paragraphs(entry.did),
        lines=tuple(_lines(told, entry)),
        note=paragraphs(words["log_note"].format(note=entry.note) if entry.note else ""),
        photo_path=words["log_photo"].format(photo=entry.photo) if entry.photo else "",
        photo=_photo(told, uri, entry),
    )


def _title(told: Told, entry: Entry) -> str:
    procedure = told.library.procedures.get(entry.procedure or "")
    step = procedure.steps.get(entry.step or "") if procedure else None
    parts = [step.title if step else entry.step or ""]
    parts.append(procedure.title if procedure else entry.procedure or "")
    said = ": ".join(part for part in reversed(parts) if part)
    return said or _value_title(told.subject.machine, entry.value)


def _value_title(machine: Machine | None, name: str | None) -> str:
    if machine is None or name is None or name not in machine.values:
        return name or ""
    return value_title(name, machine.values[name])


def _lines(told: Told, entry: Entry) -> Iterator[str]:
    yield from _found(told, entry)
    yield from _done(told, entry)
    yield from _paid(told, entry)
    words = told.kit.job
    for key in ("shows", "unproves"):
        if stages := getattr(entry, key):
            yield words[f"log_{key}"].format(stages=stage_titles(told.report, stages))
    if entry.minutes:
        yield words["log_minutes"].format(time=say_minutes(told.kit.words, entry.minutes))


def _found(told: Told, entry: Entry) -> Iterator[str]:
    words = told.kit.job
    if entry.answer == DONE and not entry.step:
        yield words["log_done"]
    elif entry.answer:
        yield words["log_answer"].format(answer=_answer(told, entry))
    if entry.reading:
        key = "log_reading" if entry.celsius is None else "log_reading_at"
        yield words[key].format(reading=entry.reading, celsius=f"{entry.celsius or 0:g}")
    if entry.cause:
        yield words["log_cause"].format(cause=_cause_title(told, entry))


def _done(told: Told, entry: Entry) -> Iterator[str]:
    words = told.kit.job
    for verb in VERBS:
        if things := getattr(entry, verb):
            yield words[f"act_{verb}"].format(things=say_things(words, "thing", things))


def _answer(told: Told, entry: Entry) -> str:
    procedure = told.library.procedures.get(entry.procedure or "")
    step = procedure.steps.get(entry.step or "") if procedure else None
    if step is None or step.reading is None or entry.answer is None:
        return entry.answer or ""
    return told.kit.words.get(f"reading_{entry.answer}", entry.answer)


def _cause_title(told: Told, entry: Entry) -> str:
    procedure, name = told.library.procedures.get(entry.procedure or ""), entry.cause or ""
    cause = procedure.causes.get(name) if procedure else None
    return cause.title if cause else name


def _paid(told: Told, entry: Entry) -> Iterator[str]:
    words = told.kit.job
    for part in entry.parts:
        price = say_money(Decimal(part.price), told.kit.settings.currency)
        number = words["log_number"].format(number=part.number) if part.number else ""
        title = f"{part.title} ({number})" if number else part.title
        yield words["log_part"].format(title=title, price=price)


def _photo(told: Told, uri: str, entry: Entry) -> PhotoView | None:
    if entry.photo is None or entry.photo not in told.photos:
        return None
    href = file_link(uri, photo_uri(told.report.job.job, entry.photo))
    return PhotoView(href, told.kit.job["photo_alt"].format(day=entry.date))
