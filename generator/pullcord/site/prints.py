"""The PDFs that lie ready beside the pages."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.pages.address import GENERAL_PAPER, MACHINE_PAPER, job_paper_uri
from pullcord.pages.kit import Kit
from pullcord.printing.output import press_pdfs, print_sheets
from pullcord.printing.press import press_with
from pullcord.project import Project
from pullcord.site.assets import Asset


def paper_assets(kit: Kit, project: Project) -> Iterator[Asset]:
    """Yield every sheet the pages link to: what holds limits for each machine, the rest once.

    And the sheet of every job.
    """
    press = press_with(kit, project, "a4")
    rest = tuple(kind for kind in GENERAL_PAPER if kind not in MACHINE_PAPER)
    for file in press_pdfs(press, rest):
        yield Asset(file.uri, file.content)
    for file in press_pdfs(press, MACHINE_PAPER, tuple(project.machines)):
        yield Asset(file.uri, file.content)
    for name in project.jobs:
        yield Asset(job_paper_uri(name), print_sheets(press, "job", name))
