"""The page of one machine: its sheet, its plugs, what follows from its figures, its procedures."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from pullcord.model.machine import Machine, SheetValue
from pullcord.pages.address import (
    BENCH,
    MACHINES,
    job_uri,
    link,
    machine_uri,
    procedure_uri,
)
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.kit import Kit, render
from pullcord.pages.lists import Entry, procedure_entry
from pullcord.pages.machine_list import kind_facts
from pullcord.pages.need import ReadMachine, ReadProject
from pullcord.pages.page import Heading, Page, PageLink
from pullcord.pages.plug import PlugView, plug_views
from pullcord.pages.prose import paragraphs, plain
from pullcord.pages.subject import Subject
from pullcord.readings import NOT_KNOWN, Limits, Table, derived_from, is_fitting, limits_both
from pullcord.readings.sheet import value_limits
from pullcord.readings.temperature import SOURCE, TABLE_CELSIUS, limits_at


@dataclass(frozen=True)
class ValueView:
    """One figure of the sheet."""

    title: str
    text: str
    """What it should read, in both systems of units; that it is not known, when it is not."""
    is_known: bool
    facts: tuple[str, ...]
    """Where it comes from, what it is, and at which temperature it holds."""
    note: tuple[str, ...]


@dataclass(frozen=True)
class MachineView:
    """The whole page, decided."""

    title: str
    about: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    jobs: tuple[PageLink, ...]
    """The jobs on it."""
    values: tuple[ValueView, ...]
    tables: tuple[Table, ...]
    """Copper windings by temperature, and what follows from the figures."""
    plugs: tuple[PlugView, ...]
    procedures: tuple[Entry, ...]
    machines_link: str
    bench_link: str
    imprint: Imprint


def machine_page(kit: Kit, project: ReadProject, read: ReadMachine, subject: Subject) -> Page:
    """Return the page of a machine."""
    machine = read.machine
    view = _view(kit, project, machine, subject)
    return Page(
        src_uri=machine_uri(machine.machine),
        title=machine.title,
        html=render(kit, "machine", view),
        headings=tuple(_headings(kit.words, view)),
        source=read.path,
    )


def _view(kit: Kit, project: ReadProject, machine: Machine, subject: Subject) -> MachineView:
    uri = machine_uri(machine.machine)
    return MachineView(
        title=machine.title,
        about=paragraphs(machine.about),
        facts=tuple(_facts(kit.words, machine)),
        jobs=tuple(_jobs(kit.words, project, machine.machine)),
        values=tuple(_value(kit.words, name, value) for name, value in machine.values.items()),
        tables=tuple(_tables(kit.words, machine)),
        plugs=plug_views(kit, subject),
        procedures=tuple(
            procedure_entry(kit, each, link(uri, procedure_uri(name, machine.machine)))
            for name, each in project.files.items()
            if is_fitting(each.procedure, machine)
        ),
        machines_link=link(uri, MACHINES),
        bench_link=link(uri, BENCH),
        imprint=imprint(kit, sheet=subject.digest),
    )


def _facts(words: Mapping[str, str], machine: Machine) -> Iterator[tuple[str, str]]:
    yield from kind_facts(words, machine)
    if machine.drive:
        yield words["machine_drive"], machine.drive
    if machine.tyres:
        yield words["machine_tyres"], machine.tyres
    if machine.altitude_metres is not None:
        yield words["machine_height"], f"{machine.altitude_metres:.0f} m"


def _jobs(words: Mapping[str, str], project: ReadProject, machine: str) -> Iterator[PageLink]:
    for name, read in project.jobs.items():
        if read.job.machine == machine:
            said = words["machine_job"].format(day=read.job.taken_in)
            yield PageLink(said, read.job.purpose, link(machine_uri(machine), job_uri(name)))


def _value(words: Mapping[str, str], name: str, value: SheetValue) -> ValueView:
    limits = value_limits(value)
    text = limits_both(limits) if limits else value.value
    facts = {
        "value_source": value.source,
        "value_winding": f"{value.at_celsius:g}" if value.winding else None,
    }
    return ValueView(
        title=value_title(name, value),
        text=text or NOT_KNOWN,
        is_known=bool(text),
        facts=tuple(words[key].format(value=fact) for key, fact in facts.items() if fact),
        note=paragraphs(value.note),
    )


def value_title(name: str, value: SheetValue) -> str:
    """Return what a figure is, in words."""
    return value.title or plain(name).capitalize()


def _tables(words: Mapping[str, str], machine: Machine) -> Iterator[Table]:
    windings = _windings(machine)
    if windings:
        columns = (words["winding"], *windings)
        rows = (
            (_celsius(celsius), *(_whole(limits[place].short) for limits in windings.values()))
            for place, celsius in enumerate(TABLE_CELSIUS)
        )
        yield Table(words["windings_title"], columns, tuple(rows), SOURCE)
    derived = tuple((each.title, each.text, each.source) for each in derived_from(machine))
    if derived:
        columns = (words["derived"], words["derived_text"], words["derived_source"])
        yield Table(words["derived_title"], columns, derived, "")


def _windings(machine: Machine) -> dict[str, tuple[Limits, ...]]:
    """Return the limits of every copper winding at each temperature, by its title."""
    known = (
        (value_title(name, value), limits, Decimal(repr(value.at_celsius)))
        for name, value in machine.values.items()
        if value.winding == "copper" and (limits := value_limits(value))
    )
    return {
        title: tuple(limits_at(limits, Decimal(celsius), stated) for celsius in TABLE_CELSIUS)
        for title, limits, stated in known
    }


def _celsius(celsius: int) -> str:
    return _whole(f"{celsius} °C".replace("-", "\N{MINUS SIGN}"))


def _whole(figure: str) -> str:
    """Return a figure that is not parted from its unit at the end of a line."""
    return figure.replace(" ", "\N{NO-BREAK SPACE}")


def _headings(words: Mapping[str, str], view: MachineView) -> Iterator[Heading]:
    plugs = tuple(Heading(plug.id, plug.title, 3) for plug in view.plugs)
    parts = {
        "jobs": view.jobs,
        "procedures": view.procedures,
        "values": view.values,
        "plugs": view.plugs,
    }
    for id_, part in (parts | {"figures": view.tables}).items():
        if part:
            below = plugs if id_ == "plugs" else ()
            yield Heading(id_, words[f"machine_{id_}_title"], 2, below)
