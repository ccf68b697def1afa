"""The machines to choose from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.model.machine import Machine
from pullcord.pages.address import MACHINES, link, machine_uri
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.need import ReadProject
from pullcord.pages.page import Page, PageLink
from pullcord.pages.prose import plain


@dataclass(frozen=True)
class MachinesView:
    """The list of all machines, decided."""

    machines: tuple[PageLink, ...]
    imprint: Imprint


def machines_page(kit: Kit, project: ReadProject) -> Page:
    """Return the page that lists every machine."""
    view = MachinesView(machine_links(kit, project, MACHINES), imprint(kit))
    html = render(kit, "machines", view)
    return Page(MACHINES, kit.words["machines_title"], html, (), in_nav=True)


def machine_links(kit: Kit, project: ReadProject, from_uri: str) -> tuple[PageLink, ...]:
    """Return a link to every machine's page, in the order of the list of machines."""
    return tuple(
        PageLink(
            read.machine.title,
            " · ".join(value for _, value in kind_facts(kit.words, read.machine)),
            link(from_uri, machine_uri(name)),
        )
        for name, read in project.machines.items()
    )


def kind_facts(words: Mapping[str, str], machine: Machine) -> tuple[tuple[str, str], ...]:
    """Return of what kind a machine is, each fact with its label; what nobody knows is left out."""
    strokes = words["strokes"].format(value=machine.strokes) if machine.strokes else ""
    facts = {
        "machine_kind": plain(machine.kind),
        "machine_ignition": plain(machine.ignition or ""),
        "machine_fuel": plain(machine.fuel or ""),
        "machine_strokes": strokes,
    }
    return tuple((words[key], value) for key, value in facts.items() if value)
