"""Procedures to choose from: by their titles on the home page, by all their words in the list."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.model.procedure import Procedure
from pullcord.pages.address import (
    BENCH,
    BINDER,
    FINDER,
    GUIDE,
    JOBS,
    MACHINES,
    MAP,
    PROCEDURES,
    RULES,
    file_link,
    link,
    procedure_uri,
)
from pullcord.pages.before import say_time
from pullcord.pages.finder_page import has_finder
from pullcord.pages.groups import URGENT, Groups
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.machine_list import machine_links
from pullcord.pages.need import ReadProcedure, ReadProject
from pullcord.pages.page import Heading, Page, PageLink

PLACES = (
    ("guide", GUIDE),
    ("list", PROCEDURES),
    ("map", MAP),
    ("jobs", JOBS),
    ("machines", MACHINES),
    ("bench", BENCH),
    ("rules", RULES),
)
"""The pages of a site, without those of what it does not have; in the order of the home page."""


@dataclass(frozen=True)
class Entry:
    """One procedure to choose."""

    title: str
    symptom: str
    also_said: tuple[str, ...]
    href: str
    facts: tuple[str, ...]
    revision: str


@dataclass(frozen=True)
class Group:
    """Procedures that stand together."""

    id: str
    title: str
    entries: tuple[Entry, ...]
    is_urgent: bool
    """Whether they are about a machine that is dangerous as it stands."""


@dataclass(frozen=True)
class HomeView:
    """The home page, decided."""

    finder: PageLink | None
    """Where one goes by signs; none in a library without any."""
    groups: tuple[Group, ...]
    jobs: tuple[PageLink, ...]
    machines: tuple[PageLink, ...]
    pages: tuple[PageLink, ...]
    imprint: Imprint


@dataclass(frozen=True)
class ListView:
    """The list of all procedures, decided."""

    count: str
    groups: tuple[Group, ...]
    imprint: Imprint


def home_page(
    kit: Kit, project: ReadProject, named: Groups, jobs: tuple[PageLink, ...] = ()
) -> Page:
    """Return the page that asks what the machine is doing, and names the jobs on the bench."""
    uri = kit.settings.home_uri
    groups = _groups(kit, project, named, uri)
    machines = machine_links(kit, project, uri)
    held = {"jobs": jobs, "machines": machines, "safety": True, "places": True}
    headings = (
        *(Heading(f"group-{group.id}", group.title, 2) for group in groups),
        *(Heading(id_, kit.words[f"{id_}_title"], 2) for id_, has in held.items() if has),
    )
    places = _places(kit, project)
    view = HomeView(_finder(kit, project), groups, jobs, machines, places, imprint(kit))
    html = render(kit, "home", view)
    return Page(uri, kit.words["home_title"], html, headings, in_nav=True)


def list_page(kit: Kit, project: ReadProject, named: Groups) -> Page:
    """Return the page that lists every procedure with its revision."""
    groups = _groups(kit, project, named, PROCEDURES)
    headings = tuple(Heading(f"group-{group.id}", group.title, 2) for group in groups)
    count = kit.words["list_count"].format(count=len(project.files))
    html = render(kit, "list", ListView(count, groups, imprint(kit)))
    return Page(PROCEDURES, kit.words["list_title"], html, headings, in_nav=True)


def procedure_entry(kit: Kit, read: ReadProcedure, href: str) -> Entry:
    """Return a procedure as one to choose."""
    procedure = read.procedure
    return Entry(
        title=procedure.title,
        symptom=procedure.symptom,
        also_said=procedure.also_said,
        href=href,
        facts=_facts(kit.words, procedure),
        revision=kit.words["imprint_procedure"].format(value=read.digest),
    )


def _groups(kit: Kit, project: ReadProject, named: Groups, from_uri: str) -> tuple[Group, ...]:
    return tuple(
        Group(
            id=group.id,
            title=group.title,
            entries=tuple(
                procedure_entry(kit, project.files[name], link(from_uri, procedure_uri(name)))
                for name in group.names
            ),
            is_urgent=group.id == URGENT,
        )
        for group in named
    )


def _finder(kit: Kit, project: ReadProject) -> PageLink | None:
    if not has_finder(project.library):
        return None
    href = link(kit.settings.home_uri, FINDER)
    return PageLink(kit.words["finder_title"], kit.words["finder_says"], href)


def _places(kit: Kit, project: ReadProject) -> tuple[PageLink, ...]:
    words, home = kit.words, kit.settings.home_uri
    pages = (
        PageLink(words[f"{key}_title"], words[f"{key}_says"], link(home, uri))
        for key, uri in PLACES
        if _has_page(project, uri)
    )
    binder = PageLink(words["binder_title"], words["binder_says"], file_link(home, BINDER))
    return (*pages, binder)


def _has_page(project: ReadProject, uri: str) -> bool:
    needs = {JOBS: project.jobs, MACHINES: project.machines, MAP: project.files}
    return bool(needs.get(uri, True))


def _facts(words: Mapping[str, str], procedure: Procedure) -> tuple[str, ...]:
    return (
        say_time(words, procedure),
        words["count_steps"].format(count=len(procedure.steps)),
        words["count_causes"].format(count=len(procedure.causes)),
    )
