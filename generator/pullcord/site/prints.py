"""The PDFs that lie ready beside the pages."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from pullcord.pages.address import GENERAL_PAPER, MACHINE_PAPER, job_paper_uri
from pullcord.pages.kit import Kit
from pullcord.printing.output import orders, print_order, print_sheets
from pullcord.printing.press import press_with
from pullcord.project import Project


def paper_files(kit: Kit, project: Project) -> Mapping[str, Callable[[], bytes]]:
    """Return every sheet the pages link to, by address, each set when it is called."""
    return {**procedure_papers(kit, project), **job_papers(kit, project)}


def procedure_papers(kit: Kit, project: Project) -> Mapping[str, Callable[[], bytes]]:
    """Return the sheets of the procedures among the project's `files`.

    What holds limits is there for each machine, the rest once.
    """
    press = press_with(kit, project, "a4")
    rest = tuple(kind for kind in GENERAL_PAPER if kind not in MACHINE_PAPER)
    ordered = (*orders(press, rest), *orders(press, MACHINE_PAPER, tuple(project.machines)))
    return {each.uri: partial(print_order, each) for each in ordered}


def job_papers(kit: Kit, project: Project) -> Mapping[str, Callable[[], bytes]]:
    """Return the sheet of every job."""
    press = press_with(kit, project, "a4")
    return {job_paper_uri(name): partial(print_sheets, press, "job", name) for name in project.jobs}
