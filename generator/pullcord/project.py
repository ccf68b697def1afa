"""Everything one build starts from: the files, the model read from them, their findings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from pullcord.finding import Finding
from pullcord.model.procedure import Library, Procedure


@dataclass(frozen=True)
class ProcedureFile:
    """One procedure with the file it was read from."""

    procedure: Procedure
    path: Path
    digest: str
    """First 12 hex digits of the SHA-256 of the file's bytes: the procedure's revision."""


@dataclass(frozen=True)
class Project:
    """What was read. `library` holds only the procedures that could be read."""

    files: Mapping[str, ProcedureFile]
    """By procedure name, in name order."""
    library: Library
    findings: tuple[Finding, ...]
    """Sorted; errors and warnings."""
