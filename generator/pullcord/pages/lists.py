"""Procedures to choose from: by symptom on the home page, all of them on the list page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.model.procedure import Procedure
from pullcord.pages.address import GUIDE, PROCEDURES, RULES, link, procedure_uri
from pullcord.pages.before import say_time
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.need import ReadProject
from pullcord.pages.page import Heading, Page
from pullcord.pages.texts import HomeGroup

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
class PageLink:
    """A page that is worth knowing of."""

    title: str
    says: str
    href: str


@dataclass(frozen=True)
class HomeView:
    """The home page, decided."""

    groups: tuple[Group, ...]
    pages: tuple[PageLink, ...]
    imprint: Imprint


@dataclass(frozen=True)
class ListView:
    """The list of all procedures, decided."""

    count: str
    entries: tuple[Entry, ...]
    imprint: Imprint


def home_page(kit: Kit, project: ReadProject) -> Page:
    """Return the page that asks what the machine is doing."""
    groups = _groups(kit, project)
    pages = tuple(
        PageLink(
            kit.words[f"{key}_title"], kit.words[f"{key}_says"], link(kit.settings.home_uri, uri)
        )
        for key, uri in (("guide", GUIDE), ("list", PROCEDURES), ("rules", RULES))
    )
    headings = (
        *(Heading(f"group-{group.id}", group.title, 2) for group in groups),
        Heading("safety", kit.words["safety_title"], 2),
        Heading("places", kit.words["places_title"], 2),
    )
    html = render(kit, "home", HomeView(groups, pages, imprint(kit)))
    return Page(kit.settings.home_uri, kit.words["home_title"], html, headings, in_nav=True)


def list_page(kit: Kit, project: ReadProject) -> Page:
    """Return the page that lists every procedure with its revision."""
    entries = tuple(_entry(kit, project, name, PROCEDURES) for name in project.files)
    count = kit.words["list_count"].format(count=len(entries))
    html = render(kit, "list", ListView(count, entries, imprint(kit)))
    return Page(PROCEDURES, kit.words["list_title"], html, (), in_nav=True)


def _groups(kit: Kit, project: ReadProject) -> tuple[Group, ...]:
    named = {name for group in kit.groups.values() for name in group.procedures}
    rest = tuple(name for name in project.files if name not in named)
    other = HomeGroup(title=kit.words["group_other"], procedures=rest)
    groups = {**kit.groups, REST: other}
    found = (_group(kit, project, id_, group) for id_, group in groups.items())
    return tuple(group for group in found if group.entries)


def _group(kit: Kit, project: ReadProject, id_: str, group: HomeGroup) -> Group:
    names = [name for name in group.procedures if name in project.files]
    return Group(
        id_, group.title, tuple(_entry(kit, project, name, kit.settings.home_uri) for name in names)
    )


def _entry(kit: Kit, project: ReadProject, name: str, from_uri: str) -> Entry:
    read = project.files[name]
    procedure = read.procedure
    return Entry(
        title=procedure.title,
        symptom=procedure.symptom,
        also_said=procedure.also_said,
        href=link(from_uri, procedure_uri(name)),
        facts=_facts(kit.words, procedure),
        revision=kit.words["imprint_procedure"].format(value=read.digest),
    )


def _facts(words: Mapping[str, str], procedure: Procedure) -> tuple[str, ...]:
    return (
        say_time(words, procedure),
        words["count_steps"].format(count=len(procedure.steps)),
        words["count_causes"].format(count=len(procedure.causes)),
    )
