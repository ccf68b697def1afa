"""All pages of a site, in one go."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.job.read import read_job_report
from pullcord.analysis.job.report import JobReport
from pullcord.pages.bench_page import bench_page
from pullcord.pages.guide_page import guide_page
from pullcord.pages.job_page import job_page
from pullcord.pages.jobs_page import Reports, job_links, jobs_page
from pullcord.pages.keys.page import keys_pages
from pullcord.pages.kit import Kit, read_kit
from pullcord.pages.lists import home_page, list_page
from pullcord.pages.machine_list import machines_page
from pullcord.pages.machine_page import machine_page
from pullcord.pages.need import ReadProject
from pullcord.pages.page import Page
from pullcord.pages.review_page import review_links
from pullcord.pages.rules_page import rules_page
from pullcord.pages.settings import Settings
from pullcord.pages.subject import Subject, subject_of
from pullcord.pages.versions import Subjects, count_walks, procedure_pages, review_pages
from pullcord.readings import parse_meter


def site_pages(project: ReadProject, settings: Settings) -> tuple[Page, ...]:
    """Return every page made from a project without error findings.

    Raises PullcordError when a template or text of the project's own, or its meter, cannot be
    used, and LayoutError when a flowchart cannot be laid out.
    """
    return pages_with(read_kit(settings), project)


def pages_with(kit: Kit, project: ReadProject) -> tuple[Page, ...]:
    """Return the same with texts and templates that were read already."""
    settings, counts = kit.settings, count_walks(project)
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
        *procedure_pages(kit, project, subjects, counts),
        *review_pages(kit, project, counts),
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
