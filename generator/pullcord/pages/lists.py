"""Procedures to choose from: by symptom on the home page, all of them on the list page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.model.procedure import Procedure
from pullcord.pages.address import (
    BENCH,
    BINDER,
    GUIDE,
    JOBS,
    MACHINES,
    PROCEDURES,
    RULES,
    file_link,
    link,
    procedure_uri,
)
from pullcord.pages.before import say_time
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.machine_list import machine_links
from pullcord.pages.need import ReadProcedure, ReadProject
from pullcord.pages.page import Heading, Page, PageLink
from pullcord.pages.texts import HomeGroup

PLACES = (
    ("guide", GUIDE),
    ("list", PROCEDURES),
    ("jobs", JOBS),
    ("machines", MACHINES),
    ("bench", BENCH),
    ("rules", RULES),
)
"""The pages every site has, but for those of jobs and machines; in the order of the home page."""
REST = "other"
"""Where procedures stand that no group names."""


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


@dataclass(frozen=True)
class HomeView:
    """The home page, decided."""

    groups: tuple[Group, ...]
    jobs: tuple[PageLink, ...]
    machines: tuple[PageLink, ...]
    pages: tuple[PageLink, ...]
    imprint: Imprint


@dataclass(frozen=True)
class ListView:
    """The list of all procedures, decided."""

    count: str
    entries: tuple[Entry, ...]
    imprint: Imprint


def home_page(kit: Kit, project: ReadProject, jobs: tuple[PageLink, ...] = ()) -> Page:
    """Return the page that asks what the machine is doing, and names the jobs on the bench."""
    groups, uri = _groups(kit, project), kit.settings.home_uri
    machines = machine_links(kit, project, uri)
    held = {"jobs": jobs, "machines": machines, "safety": True, "places": True}
    headings = (
        *(Heading(f"group-{group.id}", group.title, 2) for group in groups),
        *(Heading(id_, kit.words[f"{id_}_title"], 2) for id_, has in held.items() if has),
    )
    view = HomeView(groups, jobs, machines, _places(kit, project), imprint(kit))
    html = render(kit, "home", view)
    return Page(uri, kit.words["home_title"], html, headings, in_nav=True)


def list_page(kit: Kit, project: ReadProject) -> Page:
    """Return the page that lists every procedure with its revision."""
    entries = tuple(
        procedure_entry(kit, read, link(PROCEDURES, procedure_uri(name)))
        for name, read in project.files.items()
    )
    count = kit.words["list_count"].format(count=len(entries))
    html = render(kit, "list", ListView(count, entries, imprint(kit)))
    return Page(PROCEDURES, kit.words["list_title"], html, (), in_nav=True)


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


def _groups(kit: Kit, project: ReadProject) -> tuple[Group, ...]:
    named = {name for group in kit.groups.values() for name in group.procedures}
    rest = tuple(name for name in project.files if name not in named)
    other = HomeGroup(title=kit.words["group_other"], procedures=rest)
    groups = {**kit.groups, REST: other}
    found = (_group(kit, project, id_, group) for id_, group in groups.items())
    return tuple(group for group in found if group.entries)


def _group(kit: Kit, project: ReadProject, id_: str, group: HomeGroup) -> Group:
    entries = (
        procedure_entry(kit, project.files[name], link(kit.settings.home_uri, procedure_uri(name)))
        for name in group.procedures
        if name in project.files
    )
    return Group(id_, group.title, tuple(entries))


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
    return bool({JOBS: project.jobs, MACHINES: project.machines}.get(uri, True))


def _facts(words: Mapping[str, str], procedure: Procedure) -> tuple[str, ...]:
    return (
        say_time(words, procedure),
        words["count_steps"].format(count=len(procedure.steps)),
        words["count_causes"].format(count=len(procedure.causes)),
    )
