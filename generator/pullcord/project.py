"""Everything one build starts from: the files, the model read from them, their findings."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Any

from pullcord.errors import PullcordError
from pullcord.finding import Finding
from pullcord.model.base import Record, name_of
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.model.procedure import Library, Procedure
from pullcord.model.shared import Pieces, Shared
from pullcord.model.stage import StageList
from pullcord.rules.allowance import Allowed
from pullcord.rules.document import (
    NOTHING_SHARED,
    Document,
    build_library,
    model_of,
    read_document,
    read_pieces,
)
from pullcord.rules.run import settle_library
from pullcord.source.files import find_files, read_file
from pullcord.source.flaw import TextFlaw


@dataclass(frozen=True)
class ProcedureFile:
    """One procedure with the file it was read from."""

    procedure: Procedure
    path: Path
    digest: str
    """First 12 hex digits of the SHA-256 of its bytes and of what it shares: its revision."""


@dataclass(frozen=True)
class MachineFile:
    """One machine sheet with the file it was read from."""

    machine: Machine
    path: Path
    digest: str
    """First 12 hex digits of the SHA-256 of the file's bytes: the sheet's revision."""


@dataclass(frozen=True)
class JobFile:
    """One job log with the file it was read from."""

    job: Job
    path: Path
    digest: str
    """First 12 hex digits of the SHA-256 of the file's bytes: the log's revision."""


@dataclass(frozen=True)
class Project:
    """What was read. `library` holds only the procedures and sheets that could be read."""

    files: Mapping[str, ProcedureFile]
    """By procedure name, in name order."""
    library: Library
    findings: tuple[Finding, ...]
    """Sorted; errors and warnings."""
    machines: Mapping[str, MachineFile] = field(default_factory=dict)
    """By machine name, in name order."""
    jobs: Mapping[str, JobFile] = field(default_factory=dict)
    """By job name, in name order."""
    allowed: tuple[Allowed, ...] = ()
    """Findings that the files allow, sorted; they are not among `findings`."""


def load_project(
    folders: Sequence[Path],
    *,
    meter: MeterSheet | None = None,
    replaces: Collection[str] = (),
    base: Path | None = None,
) -> Project:
    """Read and check the procedures, machine sheets, stages and jobs of some folders or files.

    What a file holds is told by the key that names it, not by the folder. `replaces` names files
    of which a later folder's version takes the place of an earlier folder's; any other name that
    turns up twice is a finding. Findings name files as seen from `base`, if they are below it.

    Raises PullcordError when a folder cannot be read or a replaced procedure is not there twice.
    """
    raws = [_read_raw(path, folder, base) for path, folder in _paths(folders, replaces)]
    shared = [_read(raw, _NOTHING) for raw in raws if raw.model is Shared]
    sources = tuple(raw.raw for raw in raws if raw.model is Shared)
    pieces = _FilledFrom(sources, read_pieces(_documents(shared)))
    files = [_read(raw, pieces) for raw in raws if raw.model is not Shared]
    procedures = [each for each in files if each.model is Procedure]
    sheets = [each for each in files if each.model is Machine]
    stages = [each for each in files if each.model is StageList]
    jobs = [each for each in files if each.model is Job]
    kinds = [_documents(each) for each in (procedures, sheets, stages, jobs)]
    library = build_library(kinds[0], kinds[1], meter, kinds[2], kinds[3])
    settled = settle_library(kinds[0], library, kinds[1], kinds[2], kinds[3], _documents(shared))
    return Project(
        files={
            name: ProcedureFile(library.procedures[name], each.path, _digest(each))
            for name, each in _by_name(procedures)
        },
        library=library,
        findings=settled.findings,
        allowed=settled.allowed,
        machines={
            name: MachineFile(library.machines[name], each.path, _digest(each))
            for name, each in _by_name(sheets)
        },
        jobs={
            name: JobFile(library.jobs[name], each.path, _digest(each))
            for name, each in _by_name(jobs)
        },
    )


@dataclass(frozen=True)
class _Raw:
    path: Path
    shown: str
    raw: bytes | TextFlaw
    model: type[Record]


@dataclass(frozen=True)
class _Read:
    path: Path
    model: type[Record]
    document: Document[Any]


def _paths(folders: Sequence[Path], replaces: Collection[str]) -> list[tuple[Path, Path]]:
    """Return every file to read with its folder, in the order of the folders."""
    found = list(_find(folders))
    last = {path.stem: folder for path, folder in found if path.stem in replaces}
    replaced = [(path, folder) for path, folder in found if last.get(path.stem, folder) != folder]
    for name in set(replaces) - {path.stem for path, _ in replaced}:
        raise PullcordError(
            f"`replaces` names `{name}`, but no two folders have a procedure of that name"
        )
    return [pair for pair in found if pair not in replaced]


def _find(folders: Sequence[Path]) -> Iterator[tuple[Path, Path]]:
    """Yield every file with the folder it was found in, each file once; a file finds itself."""
    seen = set()
    for folder in folders:
        try:
            paths = (folder,) if folder.is_file() else find_files(folder)
        except OSError as error:
            reason = error.strerror or "unknown reason"
            raise PullcordError(f"the folder {folder} cannot be read: {reason}") from error
        for path in paths:
            place = os.path.abspath(path)
            if place not in seen:
                yield path, folder if folder.is_dir() else folder.parent
            seen.add(place)


def _read_raw(path: Path, folder: Path, base: Path | None) -> _Raw:
    raw = read_file(path, folder)
    model = model_of(raw) if isinstance(raw, bytes) else Procedure
    return _Raw(path, _shown(path, base), raw, model)


@dataclass(frozen=True)
class _FilledFrom:
    """What procedures are filled in from; two are the same that were read from the same files."""

    sources: tuple[bytes | TextFlaw, ...]
    pieces: Pieces = field(compare=False)


_NOTHING = _FilledFrom((), NOTHING_SHARED)


def _read(file: _Raw, pieces: _FilledFrom) -> _Read:
    if isinstance(file.raw, bytes):
        document = _read_once(file.shown, file.raw, file.model, pieces)
        return _Read(file.path, file.model, document)
    return _Read(file.path, Procedure, Document(file.shown, b"", None, (file.raw,), ()))


@lru_cache(maxsize=1024)  # A preview reads every file again and again, and mostly one has changed.
def _read_once(
    shown: str, raw: bytes, model: type[Record], filled_from: _FilledFrom
) -> Document[Any]:
    return read_document(shown, raw, model, filled_from.pieces)


def _shown(path: Path, base: Path | None) -> str:
    whole = Path(os.path.abspath(path))
    if base is not None and whole.is_relative_to(os.path.abspath(base)):
        path = whole.relative_to(os.path.abspath(base))
    return path.as_posix().encode("utf-8", "replace").decode()


def _documents(files: Sequence[_Read]) -> list[Document[Any]]:
    return [each.document for each in files]


def _by_name(files: Sequence[_Read]) -> Iterator[tuple[str, _Read]]:
    """Yield every record that could be read, by name in name order; of two, the first."""
    records = ((each.document.record, each) for each in reversed(files))
    named = {name_of(record)[1]: each for record, each in records if record is not None}
    yield from sorted(named.items(), key=lambda item: item[0])


def _digest(read: _Read) -> str:
    whole = read.document.raw + read.document.shares.encode()
    return hashlib.sha256(whole).hexdigest()[:12]
