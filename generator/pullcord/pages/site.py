"""All pages of a site, in one go."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.job.read import read_job_report
from pullcord.analysis.job.report import JobReport
from pullcord.drawing.cache import keep_value
from pullcord.pages.bench_page import bench_page
from pullcord.pages.finder_page import finder_page, has_finder
from pullcord.pages.groups import Groups, name_groups
from pullcord.pages.guide_page import guide_page
from pullcord.pages.job_page import job_page
from pullcord.pages.jobs_page import Reports, job_links, jobs_page
from pullcord.pages.keys.page import keys_pages
from pullcord.pages.kit import Kit, read_kit
from pullcord.pages.lists import home_page, list_page
from pullcord.pages.machine_list import machines_page
from pullcord.pages.machine_page import machine_page
from pullcord.pages.map_page import map_page
from pullcord.pages.need import ReadProject
from pullcord.pages.page import PAGES, Page
from pullcord.pages.review_page import review_links
from pullcord.pages.rules_page import rules_page
from pullcord.pages.settings import Settings
from pullcord.pages.sight import project_key
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
    return (*other_pages(kit, project), *own_pages(kit, project))


def other_pages(kit: Kit, project: ReadProject) -> tuple[Page, ...]:
    """Return what is not one procedure's page; most of it speaks of the whole library."""
    return keep_value(
        kit.settings.cache_folder,
        ("other pages", *project_key(kit, project)),
        PAGES,
        lambda: tuple(_other_pages(kit, project, _subjects(project))),
    )


def own_pages(kit: Kit, project: ReadProject) -> tuple[Page, ...]:
    """Return the pages of every procedure among the project's `files`.

    They show nothing of other procedures but what the project's `library` has of them, so `files`
    may be only some of it.
    """
    counts = count_walks(project)
    return (
        *procedure_pages(kit, project, _subjects(project), counts),
        *review_pages(kit, project, counts),
    )


def _other_pages(kit: Kit, project: ReadProject, subjects: Subjects) -> Iterator[Page]:
    """Yield what is not one procedure's page, in the order of the navigation."""
    settings, reports = kit.settings, read_reports(project, kit.settings)
    links = review_links(kit, project)
    groups = name_groups(kit.words, project.library)
    yield home_page(kit, project, groups, job_links(kit, project, reports, settings.home_uri))
    yield from _library_pages(kit, project, groups)
    yield from _job_pages(kit, project, subjects, reports)
    yield from _machine_pages(kit, project, subjects)
    yield from keep_value(
        settings.cache_folder,
        ("fixed pages", kit.digest, repr(links)),
        PAGES,
        lambda: (guide_page(kit), bench_page(kit), rules_page(kit, links), *keys_pages(kit)),
    )


def _library_pages(kit: Kit, project: ReadProject, groups: Groups) -> Iterator[Page]:
    if has_finder(project.library):
        yield finder_page(kit, project, groups)
    yield list_page(kit, project, groups)
    if project.files:
        yield map_page(kit, project, groups)


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
