"""The finished PDFs: one kind of sheets at the command line, or all that a site links to."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pullcord.drawing.cache import is_there, keep
from pullcord.drawing.shape import BAR_PX
from pullcord.errors import PullcordError
from pullcord.pages.kit import Kit, template_folders
from pullcord.pages.need import ReadProject
from pullcord.pages.settings import Settings
from pullcord.pages.sight import project_key
from pullcord.printing import frame
from pullcord.printing.binder import binder_parts
from pullcord.printing.chart import notes
from pullcord.printing.chart.symbols import CORNER_PX
from pullcord.printing.paper import Kind, PaperName
from pullcord.printing.parts.chart import chart_part
from pullcord.printing.parts.job import job_part
from pullcord.printing.parts.leaving import leaving_part
from pullcord.printing.parts.pins import pin_part
from pullcord.printing.parts.record import record_part
from pullcord.printing.parts.steps import step_part
from pullcord.printing.press import Press, Topic, read_press, subject_named, topic
from pullcord.printing.typeset import typeset
from pullcord.readings import is_fitting

SITE_KINDS: tuple[Kind, ...] = ("flowchart", "steps", "record", "walkaway")
"""What a site offers ready beside each procedure's page."""
LANGUAGE = "en"
FOLDER = "print"

_PARTS = {
    "flowchart": chart_part,
    "steps": step_part,
    "record": record_part,
    "walkaway": leaving_part,
}


@dataclass(frozen=True)
class PrintedFile:
    """A PDF of the site."""

    uri: str
    """Its address in the site, such as `print/no-spark.pdf`."""
    kind: Kind
    procedure: str
    """The procedure's name; empty for the binder."""
    machine: str
    """The machine's name; empty for machines in general."""
    content: bytes


@dataclass(frozen=True)
class Order:
    """A PDF of the site that is not printed yet."""

    uri: str
    kind: Kind
    press: Press
    procedure: str
    machine: str


def print_sheets(press: Press, kind: Kind, name: str = "", machine: str = "") -> bytes:
    """Return one kind of sheets as a PDF.

    Pin charts are a machine's: there the machine may be given as the name. The name of a job sheet
    is the job's. A binder holds
    everything when no name is given. Raises UnknownNameError for names, and PullcordError for what
    cannot be printed.
    """
    folder = press.kit.settings.cache_folder
    if kind == "binder":
        parts = binder_parts(press, name, machine)
        return _document(press, press.words["binder_title"], parts, folder)
    if kind == "job":
        return _job_sheet(press, name)
    if kind == "pins":
        part = pin_part(press, subject_named(press, machine or name))
        return _document(press, part["title"], [part], folder)
    about = topic(press, name, machine)
    if machine and not about.is_fitting:
        raise PullcordError(f"`{name}` is not for `{machine}`: see what it fits")
    return _sheets(about, kind)


def procedure_pdfs(
    project: ReadProject,
    settings: Settings,
    paper: PaperName = "a4",
    kinds: Sequence[Kind] = SITE_KINDS,
    machines: Sequence[str] = (),
) -> Iterator[PrintedFile]:
    """Yield the PDFs of every procedure, for machines in general and for those named.

    What was made before is taken from the settings' cache folder. A record sheet is left out where
    nothing is read, a machine where the procedure does not fit it. Raises PullcordError when a
    template cannot be used or a flowchart cannot be put on paper.
    """
    for each in orders(read_press(project, settings, paper), kinds, machines):
        content = print_order(each)
        yield PrintedFile(each.uri, each.kind, each.procedure, each.machine, content)


def orders(press: Press, kinds: Sequence[Kind], machines: Sequence[str] = ()) -> Iterator[Order]:
    """Yield the same as what is to be printed; nothing is set yet."""
    for name, read in press.project.files.items():
        takes = any(step.reading for step in read.procedure.steps.values())
        for machine in ("", *machines):
            sheet = press.subjects[machine].machine if machine else None
            if sheet is None or is_fitting(read.procedure, sheet):
                for kind in kinds:
                    if kind != "record" or takes:
                        yield Order(pdf_uri(kind, name, machine), kind, press, name, machine)


def print_order(order: Order) -> bytes:
    """Return the sheets that were ordered, as a PDF. Raises PullcordError as `print_sheets`."""
    return _sheets(topic(order.press, order.procedure, order.machine), order.kind)


def is_kept(order: Order) -> bool:
    """Say whether the sheets that were ordered are kept from before."""
    about = topic(order.press, order.procedure, order.machine)
    kit, key = about.press.kit, ("sheets", order.kind, *about.key)
    return is_there(kit.settings.cache_folder, _dated(kit, key))


def pdf_uri(kind: Kind, procedure: str, machine: str = "") -> str:
    """Return the address of a procedure's PDF in the site."""
    stem = procedure if kind == "flowchart" else f"{procedure}-{kind}"
    return f"{FOLDER}/{machine}/{stem}.pdf" if machine else f"{FOLDER}/{stem}.pdf"


def _job_sheet(press: Press, name: str) -> bytes:
    """Return the sheet of a job; it speaks of any procedure and part the log names."""

    def made() -> bytes:
        part = job_part(press, name)
        return _document(press, part["title"], [part])

    key = ("job sheet", name, press.paper, *project_key(press.kit, press.project))
    return _kept(press.kit, key, made)


def _sheets(about: Topic, kind: Kind) -> bytes:
    """Return the sheets of one kind: what was kept, else what is set now."""

    def made() -> bytes:
        part = _PARTS[kind](about)
        return _document(about.press, part["title"], [part])

    return _kept(about.press.kit, ("sheets", kind, *about.key), made)


def _kept(kit: Kit, key: Sequence[str], made: Callable[[], bytes]) -> bytes:
    """Return what was kept for the key and the day, which every sheet shows, else what is made."""
    return keep(kit.settings.cache_folder, _dated(kit, key), made)


def _dated(kit: Kit, key: Sequence[str]) -> tuple[str, ...]:
    return (*key, kit.settings.build_date, kit.settings.revision)


def _document(
    press: Press, title: str, parts: Sequence[Mapping[str, Any]], kept_in: Path | None = None
) -> bytes:
    """Return one PDF of all parts, kept in a folder by what it says if there is one."""
    if not parts:
        raise PullcordError("there is nothing to print")
    words, settings = press.words, press.kit.settings
    data = {
        "title": title,
        "language": LANGUAGE,
        "parts": parts,
        "words": words,
        "lines": [words["line_machine"], words["line_name"], words["line_date"]],
        "numbers_pages": parts[0]["kind"] == "contents",
        "bar_px": BAR_PX,
        "corner_px": CORNER_PX,
        "note_line_mm": notes.LINE_MM,
        "note_gap_mm": notes.COLUMN_GAP_MM,
        "title_mm": frame.TITLE_MM,
        "below_mm": frame.BELOW_MM,
        "foot_line_mm": frame.FOOT_MM,
        "form_line_mm": frame.FORM_MM,
        "machine_share": frame.MACHINE_SHARE,
    }
    return typeset(template_folders(settings), data, settings.build_date, kept_in)
