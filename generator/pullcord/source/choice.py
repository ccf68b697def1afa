"""What one check reads, and of that, what it reports on."""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pullcord.errors import PullcordError
from pullcord.source.files import ENDINGS, find_files, read_file
from pullcord.source.places import shipped_procedures
from pullcord.source.settings import FolderSettings, read_folder_settings

SETTINGS = "mkdocs.yml"


@dataclass(frozen=True)
class Choice:
    """The shipped procedures are nearly always read, for a shop's own may hand over to them."""

    folders: tuple[Path, ...]
    asked: tuple[Path, ...]
    """Files and folders whose findings are shown."""
    replaces: tuple[str, ...] = ()
    meter: Any = None
    """The shop's meter, as it stands in the project's settings."""


def choose(paths: Sequence[Path]) -> Choice:
    """Return what to read for files and folders named at the command line.

    When none is named: the project whose `mkdocs.yml` lies in the present folder, else the folder
    `procedures`, else the shipped procedures. Raises PullcordError where there is nothing to read.
    """
    if paths:
        return _choose_named(paths)
    settings = _settings()
    if settings is not None:
        folders = _each_once(_project_folders(settings))
        return Choice(folders, folders, settings.replaces, settings.meter)
    own = Path("procedures")
    return _choose_named([own if own.is_dir() else shipped_procedures()])


def is_asked(file: str, choice: Choice) -> bool:
    """Whether findings about a file are to be shown."""
    place = Path(os.path.abspath(file))
    return any(place.is_relative_to(os.path.abspath(path)) for path in choice.asked)


def _choose_named(paths: Sequence[Path]) -> Choice:
    for path in paths:
        if not (find_files(path) if path.is_dir() else path.suffix.lower() in ENDINGS):
            raise PullcordError(f"there is no YAML file at {path}")
    folders = [path if path.is_dir() else path.parent for path in paths]
    return Choice(_each_once([shipped_procedures(), *folders]), tuple(paths))


def _settings() -> FolderSettings | None:
    path = Path(SETTINGS)
    raw = read_file(path, Path()) if path.is_file() else None
    return read_folder_settings(raw) if isinstance(raw, bytes) else None


def _project_folders(settings: FolderSettings) -> Iterable[Path]:
    if settings.library:
        yield shipped_procedures()
    yield from _named_or(settings.procedures, "procedures")
    yield from _named_or(settings.machines, "machines")
    yield from _named_or(settings.jobs, "jobs")


def _named_or(named: tuple[str, ...] | None, default: str) -> Iterable[Path]:
    if named is not None:
        return (Path(folder) for folder in named)
    return (Path(default),) if Path(default).is_dir() else ()


def _each_once(folders: Iterable[Path]) -> tuple[Path, ...]:
    """Drop folders named twice; the last way of naming one is the one that is shown."""
    return tuple({folder.resolve(): folder for folder in folders}.values())
