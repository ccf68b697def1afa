"""Where a job's log lies, from the word that names it at the command line."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from pullcord.errors import PullcordError
from pullcord.model.nearest import did_you_mean, listed
from pullcord.source.choice import folders_of, project_around
from pullcord.source.files import ENDINGS, find_files


class UnknownJobError(PullcordError):
    """There is no job of that name, or no file at that path."""


@dataclass(frozen=True)
class JobPlace:
    """Where a log and its project are."""

    path: Path
    """The log, as seen from the present folder where it is below it."""
    folder: Path
    """The folder the log must lie in: a link that leads out of it is not followed."""
    project: Path
    """The folder of the project."""


def find_job(word: str) -> JobPlace:
    """Return the place of the log that a name or a path stands for.

    A name is looked for in the folders of the project around the present folder: `jobs` beside
    its `mkdocs.yml`, unless that names others. Raises UnknownJobError.
    """
    if word.lower().endswith(ENDINGS) or "/" in word or os.sep in word:
        return _at_path(Path(word))
    project = project_around(Path()) or Path.cwd()
    folders = [folder for folder in folders_of(project, "jobs") if folder.is_dir()]
    found = [path for folder in folders for path in find_files(folder)]
    place = next((path for path in found if path.stem == word), None)
    if place is None:
        names = sorted({path.stem for path in found})
        some = (
            f"there are: {listed(names)}"
            if names
            else "there is no log yet in "
            + " or ".join(str(_near(folder)) for folder in folders_of(project, "jobs"))
        )
        raise UnknownJobError(
            f"there is no job `{_short(word)}`; {did_you_mean(word, names, some)}\n"
            "`pullcord new job NAME` begins one"
        )
    folder = next(folder for folder in folders if place.is_relative_to(folder))
    return JobPlace(_near(place), folder, project)


def _at_path(path: Path) -> JobPlace:
    if not path.is_file():
        raise UnknownJobError(f"there is no file {_short(str(path))}")
    if not path.name.lower().endswith(ENDINGS):
        raise UnknownJobError(f"{path} is no YAML file: a job log is called `NAME.yaml`")
    folder = path.absolute().parent
    return JobPlace(path, folder, project_around(folder) or folder.parent)


def _near(path: Path) -> Path:
    whole, here = Path(os.path.abspath(path)), Path.cwd()
    return whole.relative_to(here) if whole.is_relative_to(here) else whole


def _short(word: str) -> str:
    return word if len(word) <= 60 else f"{word[:59]}…"
