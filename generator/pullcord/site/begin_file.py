"""The first version of one file of a project, checked before it is written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from pullcord.model.base import Record
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.procedure import Library, Procedure
from pullcord.project import Project, load_project
from pullcord.site.begin import BeginError, check_draft, check_name, render_start
from pullcord.source.choice import choose_around, folders_of, project_around
from pullcord.source.modeline import SCHEMAS, modelines, schema_name
from pullcord.source.replace import write_new

Kind = Literal["procedure", "machine", "job"]
MODELS: Mapping[Kind, type[Record]] = {"procedure": Procedure, "machine": Machine, "job": Job}
TAKEN_IN = "taken-in"
"""The stage that the first entry of a log proves, where there is such a stage."""


@dataclass(frozen=True)
class Place:
    """The project a file is begun in."""

    folder: Path
    project: Project


def begin_place() -> Place:
    """Return the project around the present folder, or what will be one."""
    around = project_around(Path())
    folder = Path() if around in (None, Path.cwd()) else around
    choice = choose_around(folder or Path())
    return Place(folder or Path(), load_project(choice.folders, replaces=choice.replaces))


def begin_file(place: Place, kind: Kind, name: str, answers: Mapping[str, Any]) -> Path:
    """Write a file that has nothing wrong with it, and return its path.

    Raises BeginError when the name is taken or cannot be one, DraftError when an answer makes the
    file unsound, WriteError when it is there already or cannot be written.
    """
    check_name(name)
    _refuse_taken(place, kind, name)
    folders: Mapping[Kind, tuple[Path, ...]] = {
        "procedure": folders_of(place.folder, "procedures"),
        "machine": folders_of(place.folder, "machines"),
        "job": folders_of(place.folder, "jobs"),
    }
    path = folders[kind][0] / f"{name}.yaml"
    schemas = place.folder / SCHEMAS
    there = schemas if (schemas / schema_name(kind)).is_file() else None
    raw = render_file(path, kind, f"{kind}.yaml", {**answers, "name": name}, there).encode()
    check_draft(path, raw, MODELS[kind], place.project.library)
    write_new(path, raw)
    return path


def render_file(
    path: Path, kind: Kind, template: str, answers: Mapping[str, Any], schemas: Path | None
) -> str:
    """Return a file's first text; where the project keeps schemas, it names its own."""
    head = f"{modelines(path, kind, schemas)}\n" if schemas else ""
    return head + render_start(template, answers)


def has_first_stage(library: Library) -> bool:
    """Whether taking a machine in proves a stage."""
    return TAKEN_IN in library.stages


def _refuse_taken(place: Place, kind: Kind, name: str) -> None:
    known: Mapping[Kind, Mapping[str, Any]] = {
        "procedure": place.project.files,
        "machine": place.project.machines,
        "job": place.project.jobs,
    }
    if name in known[kind]:
        there = known[kind][name].path
        words = " To write your own in its place, name it under `replaces` in mkdocs.yml first."
        is_shipped = kind == "procedure" and not there.resolve().is_relative_to(
            place.folder.resolve()
        )
        raise BeginError(
            f"there is a {kind} `{name}` already: {there}.{words if is_shipped else ''}"
        )
