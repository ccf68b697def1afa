"""What the command line prints from: the project in the present folder, or what ships."""

from __future__ import annotations

import os
from pathlib import Path

from pullcord.errors import FindingsError, PullcordError
from pullcord.finding import Severity
from pullcord.pages.settings import Settings
from pullcord.printing.paper import PaperName
from pullcord.printing.press import Press, read_press
from pullcord.site.origin import REVISION_DIGITS, build_date
from pullcord.site.own import load_chosen
from pullcord.source.choice import choose
from pullcord.source.files import read_file
from pullcord.source.revision import read_revision
from pullcord.source.settings import FolderSettings, read_folder_settings


def read_project_press(paper: PaperName) -> Press:
    """Read the project whose `mkdocs.yml` lies in the present folder, else what `check` would.

    Raises FindingsError when a file has errors: what was not proven safe is not printed. Raises
    PullcordError when there is nothing to read or a template cannot be used.
    """
    choice = choose(())
    project = load_chosen(choice, base=Path.cwd())
    if any(finding.severity is Severity.ERROR for finding in project.findings):
        raise FindingsError(project.findings)
    return read_press(project, project_settings(choice.settings), paper)


def project_settings(file: Path | None) -> Settings:
    """Return what a project's settings file decides about pages; without one, the defaults.

    Raises PullcordError when it names a folder of templates that is not there.
    """
    beside = file.parent if file else Path()
    raw = read_file(file, beside) if file else None
    found = read_folder_settings(raw) if isinstance(raw, bytes) else None
    given = found or FolderSettings()
    for folder in given.templates:
        if not (beside / folder).is_dir():
            raise PullcordError(f"{file}: `templates` names {folder}, which is no folder")
    return Settings(
        build_date=build_date(os.environ),
        revision=(read_revision(beside) or "")[:REVISION_DIGITS],
        template_dirs=tuple(beside / folder for folder in given.templates),
        currency=given.currency,
        cache_folder=beside / given.cache if found else None,
    )
