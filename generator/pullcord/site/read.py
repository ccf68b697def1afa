"""What a site is made from: which files, and everything that was read of them."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pullcord.drawing import chart_font_css
from pullcord.errors import FindingsError
from pullcord.finding import Severity
from pullcord.model.meter import MeterSheet
from pullcord.pages.kit import Kit, read_kit, template_folders
from pullcord.pages.settings import Settings
from pullcord.project import Project, load_project
from pullcord.rules.show import show_finding
from pullcord.site.assets import ADDRESS, Asset, read_assets
from pullcord.site.meter import read_meter
from pullcord.site.offline import find_flaws
from pullcord.site.origin import Options, folders_to_read, read_settings

FONT = f"{ADDRESS}/font.css"


@dataclass(frozen=True)
class Inputs:
    """What must be known to read it all once more, in another process."""

    settings: Settings
    folders: tuple[Path, ...]
    meter: MeterSheet | None
    replaces: tuple[str, ...]
    base: Path
    """Where the names of files are told from."""


@dataclass(frozen=True)
class ReadSite:
    """What a site is made from: everything that was read, without errors."""

    inputs: Inputs
    title: str
    kit: Kit
    project: Project
    assets: tuple[Asset, ...]
    """What goes into the site as it is, but for pictures."""
    notes: tuple[str, ...]
    """What the author should be told."""


def read_site(config: Any, options: Options) -> ReadSite:
    """Read and check everything; `config` is MkDocs's.

    Raises FindingsError with every error of every file, or another PullcordError.
    """
    inputs = Inputs(
        settings=read_settings(config.config_file_path, options, config.docs_dir),
        folders=folders_to_read(config.config_file_path, options),
        meter=read_meter(options.meter, Path(config.config_file_path)),
        replaces=tuple(options.replaces),
        base=Path.cwd(),
    )
    return read_inputs(inputs, config.site_name, find_flaws(config))


def read_inputs(inputs: Inputs, title: str, flaws: tuple[str, ...]) -> ReadSite:
    """Do the same once it is known what to read. Raises as `read_site`."""
    project = load_project(
        inputs.folders, meter=inputs.meter, replaces=inputs.replaces, base=inputs.base
    )
    if any(finding.severity is Severity.ERROR for finding in project.findings):
        raise FindingsError(project.findings)
    kit = read_kit(inputs.settings)
    return ReadSite(
        inputs=inputs,
        title=title,
        kit=kit,
        project=project,
        assets=(*read_assets(template_folders(inputs.settings)), _font(inputs.settings)),
        notes=(*flaws, *map(show_finding, project.findings)),
    )


def _font(settings: Settings) -> Asset:
    return Asset(FONT, chart_font_css(settings.cache_folder).encode())
