"""The file of a guided walk, taken in."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from pullcord.errors import FindingsError, PullcordError
from pullcord.model.job import Job
from pullcord.model.taking import take_walk
from pullcord.model.walk_record import WalkRecord
from pullcord.project import Project
from pullcord.rules.document import locate, read_document
from pullcord.source.files import read_file
from pullcord.source.item import Data


class WalkRefusedError(PullcordError):
    """The walk cannot be taken into this log; nothing was written."""


def read_walk(
    path: Path, project: Project, now: str, tell: Callable[[str], None]
) -> Callable[[Job], Sequence[Data]]:
    """Return what makes a log's new entries of a saved walk.

    `now` is the present minute as `2026-03-01 19:20`; `tell` is given sentences about what was
    skipped and what is odd. Raises FindingsError when the file cannot be read as a walk; what is
    returned raises WalkRefusedError.
    """
    raw = read_file(path.resolve(), path.resolve().parent)
    if not isinstance(raw, bytes):
        raise WalkRefusedError(f"{path}: {raw.message}")
    document = read_document(path.as_posix(), raw, WalkRecord)
    record = document.record
    if record is None or document.text_flaws:
        raise FindingsError(tuple(sorted(locate(document, ()))))
    read = project.files.get(record.walk)
    revision = read.digest if read else ""

    def make(job: Job) -> Sequence[Data]:
        taken = take_walk(record, job, project.library, revision, now)
        if taken.refusals:
            reasons = "".join(f"\n  - {sentence}" for sentence in taken.refusals)
            raise WalkRefusedError(f"nothing was written, because of {path}:{reasons}")
        for sentence in taken.notes:
            tell(sentence)
        if taken.skipped:
            answers = "1 answer is" if taken.skipped == 1 else f"{taken.skipped} answers are"
            tell(f"{answers} in the log already, and skipped")
        return taken.entries

    return make
