"""The page of one job: where it was left, what to do tonight, how far it is, what it costs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from pullcord.analysis.job.report import JobReport
from pullcord.drawing.plot import Plot
from pullcord.drawing.plot_svg import render_plot
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.pages.address import JOBS, file_link, job_paper_uri, job_uri, link, machine_uri
from pullcord.pages.caution import SignView
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.job.checks import ChecksView, checks_view
from pullcord.pages.job.left import LeftView, left_view
from pullcord.pages.job.log import EntryView, Told, log_view
from pullcord.pages.job.money import MoneyView, money_view
from pullcord.pages.job.parts import PartsView, parts_view
from pullcord.pages.job.readings import SeriesView, series_views
from pullcord.pages.job.stages import StagesView, stages_view
from pullcord.pages.job.words import last_day, machine_title, say_hours
from pullcord.pages.kit import Kit, render
from pullcord.pages.need import ReadJob, ReadProject
from pullcord.pages.page import Heading, Page
from pullcord.pages.prose import paragraphs
from pullcord.pages.subject import Subject
from pullcord.source.photo import find_photo


@dataclass(frozen=True)
class JobParts:
    """Everything a job's page and its sheet say, decided once for both."""

    title: str
    purpose: tuple[str, ...]
    note: tuple[str, ...]
    given_up: str
    """A sentence; empty unless the job was given up."""
    facts: tuple[tuple[str, str], ...]
    left: LeftView
    next: ChecksView
    stages: StagesView
    money: MoneyView
    parts: PartsView
    series: tuple[SeriesView, ...]
    log: tuple[EntryView, ...]


@dataclass(frozen=True)
class JobView:
    """The whole page, decided."""

    parts: JobParts
    signs: tuple[SignView, ...]
    money_bar: Markup
    charts: Mapping[str, Markup]
    """The drawing of each series, by its id."""
    machine_link: str
    """Empty for a machine without a sheet."""
    jobs_link: str
    paper_link: str
    jump: tuple[Heading, ...]
    """What comes after how it was left."""
    imprint: Imprint


def job_page(
    kit: Kit, project: ReadProject, read: ReadJob, report: JobReport, subject: Subject
) -> Page:
    """Return the page of a job. `subject` is its machine, or none where it has no sheet."""
    name = read.job.job
    uri, parts = job_uri(name), job_parts(kit, project, read, report, subject)
    headings = tuple(_headings(kit.job, parts))
    view = JobView(
        parts=parts,
        signs=parts.left.box.signs,
        money_bar=_drawn(kit, parts.money.plot),
        charts={each.id: _drawn(kit, each.plot) for each in parts.series},
        machine_link=link(uri, machine_uri(subject.name)) if subject.name else "",
        jobs_link=link(uri, JOBS),
        paper_link=file_link(uri, job_paper_uri(name)),
        jump=headings[1:],
        imprint=imprint(kit, sheet=subject.digest, job=read.digest),
    )
    html = render(kit, "job", view)
    return Page(uri, parts.title, html, headings, source=read.path)


def job_parts(
    kit: Kit, project: ReadProject, read: ReadJob, report: JobReport, subject: Subject
) -> JobParts:
    """Return everything that is said about a job."""
    job, words, library = read.job, kit.job, project.library
    told = Told(kit, library, subject, report, shown_photos(read))
    return JobParts(
        title=job_title(kit, job, subject.machine),
        purpose=paragraphs(job.purpose),
        note=paragraphs(job.note),
        given_up=words["given_up"].format(day=job.given_up) if job.given_up else "",
        facts=tuple(_facts(words, report)),
        left=left_view(kit, report),
        next=checks_view(kit, library, subject, report),
        stages=stages_view(kit, report),
        money=money_view(kit, report),
        parts=parts_view(kit, report),
        series=series_views(kit, report.series),
        log=log_view(told),
    )


def job_title(kit: Kit, job: Job, machine: Machine | None) -> str:
    """Return the title of a job's page. The machine is None where it has no sheet."""
    return kit.job["title"].format(machine=machine_title(machine, job.machine))


def shown_photos(read: ReadJob) -> frozenset[str]:
    """Return the pictures of a log that go with the site, as the log names them."""
    named = {entry.photo for entry in read.job.log if entry.photo}
    return frozenset(photo for photo in named if find_photo(read.path, photo))


def _facts(words: Mapping[str, str], report: JobReport) -> Iterator[tuple[str, str]]:
    yield words["taken_in"], report.job.taken_in
    if day := last_day(report):
        yield words["last_entry"], day
    yield words["hours"], say_hours(report.money.hours)


def _drawn(kit: Kit, plot: Plot) -> Markup:
    svg = render_plot(plot, kit.settings.template_dirs)
    return Markup(svg)  # noqa: S704 (escaped by the drawing's own template)


def _headings(words: Mapping[str, str], parts: JobParts) -> Iterator[Heading]:
    held = {
        "left": True, "next": True, "stages": True, "money": True, "buy": True,
        "readings": parts.series, "parts": True, "log": True,
    }  # fmt: skip
    yield from (Heading(id_, words[f"{id_}_title"], 2) for id_, has in held.items() if has)
