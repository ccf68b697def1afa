"""All pages of a site, in one go."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pullcord.analysis.job.counts import count_outcomes
from pullcord.analysis.job.read import read_job_report
from pullcord.analysis.job.report import JobReport
from pullcord.pages.bench_page import bench_page
from pullcord.pages.chart import chart_views
from pullcord.pages.guide_page import guide_page
from pullcord.pages.job_page import job_page
from pullcord.pages.jobs_page import Reports, job_links, jobs_page
from pullcord.pages.keys.page import keys_pages
from pullcord.pages.kit import Kit, read_kit
from pullcord.pages.lists import home_page, list_page
from pullcord.pages.machine_list import machines_page
from pullcord.pages.machine_page import machine_page
from pullcord.pages.need import ReadProcedure, ReadProject
from pullcord.pages.order import reading_order
from pullcord.pages.page import Page
from pullcord.pages.procedure_page import procedure_page
from pullcord.pages.review_page import review_links, review_page
from pullcord.pages.rules_page import rules_page
from pullcord.pages.settings import Settings
from pullcord.pages.subject import Subject, subject_of
from pullcord.pages.walk_data import walk_data, walk_json
from pullcord.pages.walk_left import read_left
from pullcord.pages.way import Signposts
from pullcord.readings import is_fitting, parse_meter
from pullcord.safety.notes import SafetyNotes, safety_notes

Subjects = Mapping[str, Subject]
"""The general page's subject by the empty name, then every machine by its own."""


def site_pages(project: ReadProject, settings: Settings) -> tuple[Page, ...]:
    """Return every page made from a project without error findings.

    Raises PullcordError when a template or text of the project's own, or its meter, cannot be
    used, and LayoutError when a flowchart cannot be laid out.
    """
    kit = read_kit(settings)
    subjects, reports = _subjects(project), read_reports(project, settings)
    jobs = job_links(kit, project, reports, settings.home_uri)
    return (
        home_page(kit, project, jobs),
        list_page(kit, project),
        *_job_pages(kit, project, subjects, reports),
        *_machine_pages(kit, project, subjects),
        guide_page(kit),
        bench_page(kit),
        rules_page(kit, review_links(kit, project)),
        *keys_pages(kit),
        *_procedure_pages(kit, project, subjects),
        *(review_page(kit, project.library, read) for read in project.files.values()),
    )


def read_reports(project: ReadProject, settings: Settings) -> dict[str, JobReport]:
    """Return what there is to say about every job, by name."""
    return {
        name: read_job_report(read.job, project.library, settings.currency)
        for name, read in project.jobs.items()
    }


def _subjects(project: ReadProject) -> Subjects:
    meter = parse_meter(project.library.meter)
    machines = {
        name: subject_of(read.machine, read.digest, meter)
        for name, read in project.machines.items()
    }
    return {"": Subject(meter), **machines}


def _job_pages(
    kit: Kit, project: ReadProject, subjects: Subjects, reports: Reports
) -> Iterator[Page]:
    if reports:
        yield jobs_page(kit, project, reports)
    for name, read in project.jobs.items():
        subject = subjects.get(read.job.machine, subjects[""])
        yield job_page(kit, project, read, reports[name], subject)


def _machine_pages(kit: Kit, project: ReadProject, subjects: Subjects) -> Iterator[Page]:
    if project.machines:
        yield machines_page(kit, project)
    for name, read in project.machines.items():
        yield machine_page(kit, project, read, subjects[name])


def _procedure_pages(kit: Kit, project: ReadProject, subjects: Subjects) -> Iterator[Page]:
    notes = safety_notes(project.library)
    for name, read in project.files.items():
        yield from _versions(kit, project, read, notes[name], subjects)


def _versions(
    kit: Kit, project: ReadProject, read: ReadProcedure, notes: SafetyNotes, subjects: Subjects
) -> Iterator[Page]:
    """Yield the general page of a procedure, then one for every machine it fits."""
    procedure, order = read.procedure, reading_order(read.procedure)
    pages = [
        Signposts(procedure, project.library, order, kit.words, subject)
        for subject in subjects.values()
        if subject.machine is None or is_fitting(procedure, subject.machine)
    ]
    charts = chart_views(kit, pages, notes.boxes)
    library = project.library
    left = read_left(procedure, count_outcomes(library.jobs.values(), procedure, library))
    for posts, chart in zip(pages, charts, strict=True):
        walk = walk_json(walk_data(kit, posts, read.digest, left))
        yield procedure_page(kit, read, posts, notes, chart, walk)
