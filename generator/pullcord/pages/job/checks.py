"""The next checks of a job, each with a link to its step on the machine's own page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pullcord.analysis.job.report import JobReport, NextCheck
from pullcord.model.procedure import Library
from pullcord.pages.address import anchor, job_uri, link
from pullcord.pages.kit import Kit
from pullcord.pages.subject import Subject
from pullcord.pages.times import say_minutes
from pullcord.pages.way import procedure_page_uri


@dataclass(frozen=True)
class CheckView:
    """One check worth doing next."""

    title: str
    procedure: str
    """The procedure's title."""
    facts: str
    """Time and tools."""
    why: str
    href: str


@dataclass(frozen=True)
class ChecksView:
    """Tonight's checks."""

    checks: tuple[CheckView, ...]
    first: tuple[str, ...]
    """What goes before any of them: what was left unsafe, a stop line that is passed."""
    all: str
    """The time they take together; empty for one or none."""


def checks_view(kit: Kit, library: Library, subject: Subject, report: JobReport) -> ChecksView:
    """Return the next checks; a procedure nobody has is named without a link."""
    checks = tuple(_check(kit, library, subject, report, each) for each in report.next_checks)
    minutes = sum(each.minutes for each in report.next_checks)
    time = kit.job["next_all"].format(time=say_minutes(kit.words, minutes))
    return ChecksView(checks, tuple(_first(kit, report)), time if len(checks) > 1 else "")


def _first(kit: Kit, report: JobReport) -> Iterator[str]:
    if not report.left.is_safe:
        yield kit.job["next_first"]
    if report.money.is_past_stop:
        yield kit.job["next_stop"]


def step_link(
    library: Library, subject: Subject, from_uri: str, procedure: str, step: str = ""
) -> str:
    """Return the link to a step, on the machine's own page where it has one; empty for no page."""
    if procedure not in library.procedures:
        return ""
    there = procedure_page_uri(library, procedure, subject)
    known = step in library.procedures[procedure].steps
    return link(from_uri, there, anchor(f"step:{step}") if known else "")


def _check(
    kit: Kit, library: Library, subject: Subject, report: JobReport, check: NextCheck
) -> CheckView:
    procedure = library.procedures.get(check.procedure)
    return CheckView(
        title=check.title,
        procedure=procedure.title if procedure else check.procedure,
        facts=say_check(kit.words, kit.job, check),
        why=check.why,
        href=step_link(library, subject, job_uri(report.job.job), check.procedure, check.step),
    )


def say_check(words: Mapping[str, str], job: Mapping[str, str], check: NextCheck) -> str:
    """Return the time and the tools of a check."""
    key = "next_facts" if check.tools else "next_facts_bare"
    time = say_minutes(words, check.minutes)
    return job[key].format(time=time, tools=", ".join(check.tools))
