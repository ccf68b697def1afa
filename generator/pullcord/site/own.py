"""A project read for a command: its files, judged by its own meter."""

from __future__ import annotations

from pathlib import Path

from pullcord.project import Project, load_project
from pullcord.site.meter import read_meter
from pullcord.source.choice import Choice


def load_chosen(choice: Choice, base: Path | None = None) -> Project:
    """Read and check what was chosen; findings name files as seen from `base`.

    Raises FindingsError when the project's meter cannot be, and PullcordError when a folder cannot
    be read or a replaced procedure is not there twice.
    """
    meter = read_meter(choice.meter, choice.settings)
    return load_project(choice.folders, meter=meter, replaces=choice.replaces, base=base)
