"""Texts through the whole checking, as files of a project would go through it."""

from __future__ import annotations

from collections.abc import Mapping

from pullcord.finding import Finding
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.procedure import Procedure
from pullcord.model.shared import Shared
from pullcord.model.stage import StageList
from pullcord.rules.document import build_library, model_of, read_document, read_pieces
from pullcord.rules.run import check_library


def check_files(files: Mapping[str, bytes]) -> tuple[Finding, ...]:
    """Return every finding about the files of one project, given by name."""
    shared = [read_document(n, raw, Shared) for n, raw in files.items() if model_of(raw) is Shared]
    pieces = read_pieces(shared)
    procedures, machines, stages, jobs = (
        [read_document(n, raw, kind, pieces) for n, raw in files.items() if model_of(raw) is kind]
        for kind in (Procedure, Machine, StageList, Job)
    )
    library = build_library(procedures, machines, stages=stages, jobs=jobs)
    return check_library(procedures, library, machines, stages, jobs, shared)
