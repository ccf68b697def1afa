"""The PDFs that lie ready beside the pages."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.pages.address import GENERAL_PAPER, MACHINE_PAPER, job_paper_uri
from pullcord.pages.settings import Settings
from pullcord.printing.output import print_sheets, procedure_pdfs
from pullcord.printing.press import read_press
from pullcord.project import Project
from pullcord.site.assets import Asset


def paper_assets(project: Project, settings: Settings) -> Iterator[Asset]:
    """Yield every sheet the pages link to: what holds limits for each machine, the rest once.

    And the sheet of every job.
    """
    rest = tuple(kind for kind in GENERAL_PAPER if kind not in MACHINE_PAPER)
    for file in procedure_pdfs(project, settings, kinds=rest):
        yield Asset(file.uri, file.content)
    machines = tuple(project.machines)
    for file in procedure_pdfs(project, settings, kinds=MACHINE_PAPER, machines=machines):
        yield Asset(file.uri, file.content)
    press = read_press(project, settings, "a4")
    for name in project.jobs:
        yield Asset(job_paper_uri(name), print_sheets(press, "job", name))
