"""What the command line prints from: the project in the present folder, or what ships."""

from __future__ import annotations

import os
from pathlib import Path

from pullcord.errors import FindingsError, PullcordError
from pullcord.finding import Severity
from pullcord.pages.settings import Settings
from pullcord.printing.paper import PaperName
from pullcord.printing.press import Press, read_press
from pullcord.project import load_project
from pullcord.site.meter import read_meter
from pullcord.site.origin import REVISION_DIGITS, build_date
from pullcord.source.choice import SETTINGS, choose
from pullcord.source.files import read_file
from pullcord.source.revision import read_revision
from pullcord.source.settings import FolderSettings, read_folder_settings


def read_project_press(paper: PaperName) -> Press:
    """Read the project whose `mkdocs.yml` lies in the present folder, else what `check` would.

    Raises FindingsError when a file has errors: what was not proven safe is not printed. Raises
    PullcordError when there is nothing to read or a template cannot be used.
    """
    choice = choose(())
    meter = read_meter(choice.meter, Path(SETTINGS))
    project = load_project(choice.folders, meter=meter, replaces=choice.replaces, base=Path.cwd())
    if any(finding.severity is Severity.ERROR for finding in project.findings):
        raise FindingsError(project.findings)
    return read_press(project, project_settings(), paper)


def project_settings() -> Settings:
    """Return what the `mkdocs.yml` of the present folder decides about pages, if there is one."""
    path = Path(SETTINGS)
    raw = read_file(path, Path()) if path.is_file() else None
    found = read_folder_settings(raw) if isinstance(raw, bytes) else None
    given = found or FolderSettings()
    for folder in given.templates:
        if not Path(folder).is_dir():
            raise PullcordError(f"{SETTINGS}: `templates` names {folder}, which is no folder")
    return Settings(
        build_date=build_date(os.environ),
        revision=(read_revision(Path.cwd()) or "")[:REVISION_DIGITS],
        template_dirs=tuple(Path(folder) for folder in given.templates),
        currency=given.currency,
        cache_folder=Path(given.cache) if found else None,
    )
