"""A job log read whole: what has been proved, what is left on, what to do and to buy next."""

from __future__ import annotations

from pullcord.analysis.job.checks import read_next_checks
from pullcord.analysis.job.given import given_of
from pullcord.analysis.job.left import read_left
from pullcord.analysis.job.outlay import read_outlays
from pullcord.analysis.job.report import JobReport
from pullcord.analysis.job.series import read_series
from pullcord.analysis.job.spending import read_money, read_proofs, read_purchases
from pullcord.analysis.job.stages import read_stages
from pullcord.model.job import Job
from pullcord.model.procedure import Library


def read_job_report(job: Job, library: Library, currency: str = "") -> JobReport:
    """Return everything there is to say about a job. Never raises for names nobody knows.

    `currency` stands behind the amounts in sentences.
    """
    given = given_of(job, library)
    stages = read_stages(given)
    outlays = read_outlays(given, stages)
    proofs = read_proofs(given, stages, outlays, currency)
    return JobReport(
        job=job,
        stages=stages,
        left=read_left(given),
        next_checks=read_next_checks(given, stages, proofs),
        proofs=proofs,
        purchases=read_purchases(given, stages, proofs),
        money=read_money(given, stages, outlays, proofs, currency),
        series=read_series(given),
        newest_first=tuple((note.place, note.entry) for note in reversed(given.notes)),
    )
