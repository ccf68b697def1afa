"""What a procedure's pages and papers see of the library, and the key they are kept by.

They are given no more than that, so whatever they come to show is in the key, and a change
elsewhere in the library leaves them as they are.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from hashlib import sha256

from pullcord.model.base import Record
from pullcord.model.procedure import Library, Procedure
from pullcord.pages.job_page import shown_photos
from pullcord.pages.kit import Kit
from pullcord.pages.need import ReadProcedure, ReadProject
from pullcord.pages.subject import Subject
from pullcord.readings import is_fitting
from pullcord.safety.family import handed_to
from pullcord.safety.flow import Same
from pullcord.safety.notes import SafetyNotes


def seen_from(procedure: Procedure, library: Library) -> Library:
    """Return the procedure, those it may hand over to by name only, and the machines it fits."""
    known = library.procedures
    others = (known[name] for name in handed_to(procedure) if name in known)
    machines = library.machines.items()
    return Library.model_construct(
        procedures={
            **{other.procedure: _only_named(other) for other in others},
            procedure.procedure: procedure,
        },
        machines={name: each for name, each in machines if is_fitting(procedure, each)},
        meter=library.meter,
    )


def sight_key(
    kit: Kit, seen: Library, read: ReadProcedure, notes: SafetyNotes, subjects: Iterable[Subject]
) -> tuple[str, ...]:
    """Return what pages or papers of a procedure are made from, as the key of a cache.

    `seen` is what `seen_from` gave.
    """
    revisions = (f"{subject.name} {subject.digest}" for subject in subjects)
    return (*review_key(kit, seen, read), _digest(seen.meter), repr(notes), *revisions)


def review_key(kit: Kit, seen: Library, read: ReadProcedure) -> tuple[str, ...]:
    """Return what the page for a procedure's author is made from, as the key of a cache."""
    records = (*seen.procedures.values(), *seen.machines.values())
    return (kit.digest, read.digest, *map(_digest, records))


def project_key(kit: Kit, project: ReadProject) -> tuple[str, ...]:
    """Return all that any page is made from, for those that speak of many files."""
    library = project.library
    told = (
        repr((dict(library.stages), library.unread)),
        _digest(library.meter),
        *(f"{read.digest} {_digest(read.procedure)}" for read in project.files.values()),
        *(f"{r.path} {r.digest} {_digest(r.machine)}" for r in project.machines.values()),
        *(f"{r.path} {r.digest} {_digest(r.job)}" for r in project.jobs.values()),
        *(repr(sorted(shown_photos(read))) for read in project.jobs.values()),
    )
    return kit.digest, sha256("\0".join(told).encode()).hexdigest()


def _digest(record: Record) -> str:
    return _digest_of(Same((record,)))


@lru_cache(maxsize=8192)  # A preview reads most files once and builds from them many times.
def _digest_of(key: Same) -> str:
    return sha256(repr(key.parts[0]).encode()).hexdigest()


def _only_named(other: Procedure) -> Procedure:
    return Procedure.model_construct(
        procedure=other.procedure,
        title=other.title,
        fits=other.fits,
        symptom="",
        about="",
        start="",
        causes={},
        steps={},
    )
