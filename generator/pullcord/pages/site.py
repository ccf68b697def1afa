"""All pages of a site, in one go."""

from __future__ import annotations

from pullcord.pages.chart import chart_view
from pullcord.pages.guide_page import guide_page
from pullcord.pages.kit import Kit, read_kit
from pullcord.pages.lists import home_page, list_page
from pullcord.pages.need import ReadProcedure, ReadProject
from pullcord.pages.page import Page
from pullcord.pages.procedure_page import procedure_page
from pullcord.pages.rules_page import rules_page
from pullcord.pages.settings import Settings
from pullcord.safety.notes import SafetyNotes, safety_notes


def site_pages(project: ReadProject, settings: Settings) -> tuple[Page, ...]:
    """Return every page made from a project without error findings.

    Raises PullcordError when a template or text of the project's own cannot be used, and
    LayoutError when a flowchart cannot be laid out.
    """
    kit = read_kit(settings)
    notes = safety_notes(project.library)
    procedures = tuple(
        _procedure_page(kit, project, read, notes[name]) for name, read in project.files.items()
    )
    lists = (home_page(kit, project), list_page(kit, project))
    return (*lists, guide_page(kit), rules_page(kit), *procedures)


def _procedure_page(
    kit: Kit, project: ReadProject, read: ReadProcedure, notes: SafetyNotes
) -> Page:
    chart = chart_view(kit, read.procedure, project.library, notes.boxes)
    return procedure_page(kit, read, project.library, notes, chart)
