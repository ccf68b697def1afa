"""Which pages a site has, without what they say: for a build that makes only some of them."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.model.schema import KINDS
from pullcord.pages.address import (
    BENCH,
    FINDER,
    GUIDE,
    JOBS,
    MACHINES,
    MAP,
    PROCEDURES,
    RULES,
    job_uri,
    keys_uri,
    machine_uri,
    procedure_uri,
    review_uri,
)
from pullcord.pages.finder_page import has_finder
from pullcord.pages.job_page import job_title
from pullcord.pages.keys.page import keys_title
from pullcord.pages.kit import Kit
from pullcord.pages.need import ReadProject
from pullcord.pages.page import Page
from pullcord.pages.procedure_page import version_title
from pullcord.pages.review_page import review_title
from pullcord.readings import is_fitting


def other_outline(kit: Kit, project: ReadProject) -> Iterator[Page]:
    """Yield what `other_pages` gives, in its order, with nothing on the pages."""
    words = kit.words
    yield _in_nav(kit.settings.home_uri, words["home_title"])
    if has_finder(project.library):
        yield _in_nav(FINDER, words["finder_title"])
    yield _in_nav(PROCEDURES, words["list_title"])
    if project.files:
        yield Page(MAP, words["map_title"], "", ())
    yield from _jobs(kit, project)
    yield from _machines(kit, project)
    yield _in_nav(GUIDE, words["guide_title"])
    yield Page(BENCH, words["bench_title"], "", ())
    yield Page(RULES, words["rules_title"], "", ())
    for kind in KINDS:
        yield Page(keys_uri(kind), keys_title(kit, kind), "", (), in_search=False)


def own_outline(kit: Kit, project: ReadProject) -> Iterator[Page]:
    """Yield what `own_pages` gives, in its order, with nothing on the pages."""
    for name, read in project.files.items():
        procedure = read.procedure
        yield Page(procedure_uri(name), version_title(kit, procedure), "", ())
        for machine, sheet in project.machines.items():
            if is_fitting(procedure, sheet.machine):
                title = version_title(kit, procedure, sheet.machine.title)
                yield Page(procedure_uri(name, machine), title, "", (), in_search=False)
    for name, read in project.files.items():
        yield Page(review_uri(name), review_title(kit, read.procedure), "", (), in_search=False)


def _jobs(kit: Kit, project: ReadProject) -> Iterator[Page]:
    if project.jobs:
        yield _in_nav(JOBS, kit.words["jobs_title"])
    for name, read in project.jobs.items():
        machine = project.library.machines.get(read.job.machine)
        yield Page(job_uri(name), job_title(kit, read.job, machine), "", ())


def _machines(kit: Kit, project: ReadProject) -> Iterator[Page]:
    if project.machines:
        yield _in_nav(MACHINES, kit.words["machines_title"])
    for name, read in project.machines.items():
        yield Page(machine_uri(name), read.machine.title, "", ())


def _in_nav(uri: str, title: str) -> Page:
    return Page(uri, title, "", (), in_nav=True)
