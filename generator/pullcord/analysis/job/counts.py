"""What a shop's own jobs have found: how many finished walks ended where."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from pullcord.analysis.job.given import given_of
from pullcord.analysis.job.noted import DONE
from pullcord.analysis.job.walks import Walk, walks_of
from pullcord.model.job import Job
from pullcord.model.procedure import Library, Procedure


def count_outcomes(
    jobs: Iterable[Job], procedure: Procedure, library: Library | None = None
) -> Mapping[str, int]:
    """Return, by outcome (its graph node), how many finished walks of a procedure ended there.

    A walk that ends at `done` after a cause was put right on the same machine is the proof of the
    remedy, not a machine that had nothing, so it is not counted. `library` gives the sheets that
    tell what a reading without an answer means.
    """
    known = library or Library(procedures={procedure.procedure: procedure})
    return count_all_outcomes(jobs, known).get(procedure.procedure, {})


def count_all_outcomes(jobs: Iterable[Job], library: Library) -> Mapping[str, Mapping[str, int]]:
    """Return the same of every procedure that was walked to an end, by its name."""
    counts: dict[str, Counter[str]] = {}
    for job in jobs:
        for name, walks in walks_of(given_of(job, library)).items():
            counts.setdefault(name, Counter()).update(_ends(walks))
    return {name: dict(sorted(found.items())) for name, found in counts.items()}


def _ends(walks: Iterable[Walk]) -> Iterable[str]:
    was_cured = False
    for walk in walks:
        if walk.at is None or not walk.is_over:
            continue
        if not (walk.at == DONE and was_cured):
            yield walk.at
        was_cured = walk.is_remedied
