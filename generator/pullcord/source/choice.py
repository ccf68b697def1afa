"""What one check reads, and of that, what it reports on."""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Literal

from pullcord.errors import PullcordError
from pullcord.source.files import ENDINGS, SETTINGS_NAMES, find_files, read_file
from pullcord.source.places import shipped_procedures
from pullcord.source.settings import FolderSettings, read_folder_settings

SETTINGS = SETTINGS_NAMES[0]


@dataclass(frozen=True)
class Choice:
    """The shipped procedures are nearly always read, for a shop's own may hand over to them."""

    folders: tuple[Path, ...]
    asked: tuple[Path, ...]
    """Files and folders whose findings are shown."""
    replaces: tuple[str, ...] = ()
    meter: Any = None
    """The shop's meter, as it stands in the project's settings."""
    settings: Path | None = None
    """The project's settings file; of several projects, the first one's."""


@dataclass(frozen=True)
class _Own:
    """A project: its settings file and what that says of the plugin."""

    file: Path
    settings: FolderSettings

    @property
    def folders(self) -> tuple[Path, ...]:
        """Everything it reads, the shipped procedures first if they are part of it."""
        shipped = (shipped_procedures(),) if self.settings.library else ()
        return (*shipped, *_project_folders(self.settings, self.file.parent))


def choose(paths: Sequence[Path]) -> Choice:
    """Return what to read for files and folders named at the command line.

    A folder whose settings list the plugin, or that file itself, stands for the project. When
    nothing is named: the project in the present folder, else the folder `procedures`, else the
    shipped procedures. Raises PullcordError where there is nothing to read.
    """
    if not paths and _project_at(Path()) is None:
        own = Path("procedures")
        paths = [own if own.is_dir() else shipped_procedures()]
    return _choose_named(paths or [Path()])


def choose_around(base: Path) -> Choice:
    """Return what to read for the folder of a project, or for one that has no settings yet."""
    if _project_at(base) is not None:
        return _choose_named([base])
    folders = (shipped_procedures(), *_project_folders(FolderSettings(), base))
    return Choice(_each_once(folders), _each_once(folders))


def choose_own(paths: Sequence[Path]) -> tuple[tuple[Path, Path], ...]:
    """Return the files of one's own that some paths stand for, each once, with its folder.

    A project's folder stands for the folders it reads, without the shipped procedures. When
    nothing is named: the project in the present folder, or the folders every project has.
    Raises PullcordError where there is nothing.
    """
    pairs = [pair for path in paths or _default_own() for pair in _own_files(path)]
    if not pairs:
        places = ", ".join(map(str, paths)) or "this place"
        raise PullcordError(f"there is no YAML file at {places}")
    return tuple({path.resolve(): (path, folder) for path, folder in pairs}.values())


def _default_own() -> Sequence[Path]:
    if _project_at(Path()):
        return [Path()]
    return list(_project_folders(FolderSettings(), Path()))


def _own_files(path: Path) -> Iterable[tuple[Path, Path]]:
    own = _project_at(path)
    if own is None and path.is_file():
        _check_readable(path)
        return [(path, path.parent)]
    folders = _project_folders(own.settings, own.file.parent) if own else [path]
    return [(file, folder) for folder in folders for file in find_files(folder)]


def choose_side(path: Path) -> Choice:
    """Return what to read for one side of a comparison, what is named going before all else.

    Of two files that hold something of the same name the first one read counts, so a file stands
    before its neighbours, and they before what is shipped. Of a project only its own folders are
    asked for. Raises PullcordError where there is nothing to read.
    """
    own = _project_at(path)
    if own:
        folders = _each_once(_project_folders(own.settings, own.file.parent))
        return replace(choose([path]), asked=folders)
    _check_readable(path)
    return Choice(_each_once([path, *_above(path), shipped_procedures()]), (path,))


def project_around(place: Path) -> Path | None:
    """Return the nearest folder, from a place upward, whose settings list the plugin."""
    whole = place.resolve()
    return next((each for each in (whole, *whole.parents) if _project_at(each)), None)


def folders_of(base: Path, kind: Literal["procedures", "machines", "jobs"]) -> tuple[Path, ...]:
    """Return a project's folders for one kind of file, whether they are there or not."""
    own = _project_at(base)
    named: tuple[str, ...] | None = getattr(own.settings, kind) if own else None
    return tuple(base / folder for folder in ((kind,) if named is None else named))


def is_asked(file: str, choice: Choice) -> bool:
    """Whether findings about a file are to be shown."""
    place = Path(os.path.abspath(file))
    return any(place.is_relative_to(os.path.abspath(path)) for path in choice.asked)


def find_settings(folder: Path) -> Path | None:
    """Return the settings file of a folder, whether it lists the plugin or not."""
    return next((folder / name for name in SETTINGS_NAMES if (folder / name).is_file()), None)


def _choose_named(paths: Sequence[Path]) -> Choice:
    found = [(path, _project_at(path)) for path in paths]
    projects = [project for _, project in found if project]
    plain = [path for path, project in found if project is None]
    for path in plain:
        _check_readable(path)
    folders = [folder for project in projects for folder in project.folders]
    if plain and not projects:
        folders.append(shipped_procedures())
    first = projects[0] if projects else None
    return Choice(
        folders=_each_once([*folders, *(path if path.is_dir() else path.parent for path in plain)]),
        asked=(*_each_once(folders if projects else ()), *plain),
        replaces=tuple(name for project in projects for name in project.settings.replaces),
        meter=first.settings.meter if first else None,
        settings=first.file if first else None,
    )


def _project_at(path: Path) -> _Own | None:
    """Return the project a folder or a settings file stands for, if it is one."""
    file = path if path.name in SETTINGS_NAMES else find_settings(path)
    raw = read_file(file, file.parent) if file and file.is_file() else None
    settings = read_folder_settings(raw) if isinstance(raw, bytes) else None
    return _Own(file, settings) if file and settings else None


def _check_readable(path: Path) -> None:
    if path.name in SETTINGS_NAMES:
        raise PullcordError(f"{path} does not list the plugin `pullcord`, so it is no project")
    if not (find_files(path) if path.is_dir() else path.suffix.lower() in ENDINGS):
        raise PullcordError(f"there is no YAML file at {path}")


def _above(path: Path) -> tuple[Path, ...]:
    return () if path.is_dir() else (path.parent,)


def _project_folders(settings: FolderSettings, beside: Path) -> Iterable[Path]:
    for named, default in (
        (settings.procedures, "procedures"),
        (settings.machines, "machines"),
        (settings.jobs, "jobs"),
    ):
        if named is not None:
            yield from (beside / folder for folder in named)
        elif (beside / default).is_dir():
            yield beside / default


def _each_once(folders: Iterable[Path]) -> tuple[Path, ...]:
    """Drop folders named twice; the last way of naming one is the one that is shown."""
    return tuple({folder.resolve(): folder for folder in folders}.values())
