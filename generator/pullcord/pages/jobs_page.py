"""All jobs of the shed at a glance: one card a machine, those left unsafe first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.analysis.job.report import JobReport
from pullcord.pages.address import JOBS, job_uri, link
from pullcord.pages.imprint import Imprint, imprint
from pullcord.pages.job.left import left_view
from pullcord.pages.job.stages import last_proved
from pullcord.pages.job.words import last_day, machine_title, say_money
from pullcord.pages.kit import Kit, render
from pullcord.pages.need import ReadProject
from pullcord.pages.page import Page, PageLink
from pullcord.pages.times import say_minutes

Reports = Mapping[str, JobReport]
"""By job name."""


@dataclass(frozen=True)
class CardView:
    """One job at a glance."""

    title: str
    purpose: str
    href: str
    is_safe: bool
    mark: str
    left: str
    """The day, and whether it was left safe."""
    left_word: str
    stage: str
    money: str
    stop: str
    """That the stop line is passed or the job given up; empty for neither."""
    next_label: str
    next: str
    """What was left unsafe and goes before all else, or the next check."""


@dataclass(frozen=True)
class JobsView:
    """The page, decided."""

    cards: tuple[CardView, ...]
    imprint: Imprint


def jobs_page(kit: Kit, project: ReadProject, reports: Reports) -> Page:
    """Return the page of all jobs."""
    cards = tuple(_card(kit, project, report) for report in in_order(reports))
    html = render(kit, "jobs", JobsView(cards, imprint(kit)))
    return Page(JOBS, kit.words["jobs_title"], html, (), in_nav=True)


def job_links(
    kit: Kit, project: ReadProject, reports: Reports, from_uri: str
) -> tuple[PageLink, ...]:
    """Return a link to every job, in the order of the cards, with how it was left."""
    return tuple(
        PageLink(card.title, f"{card.mark} {card.left_word} · {card.next}", href)
        for report in in_order(reports)
        for card, href in [(_card(kit, project, report), link(from_uri, _uri(report)))]
    )


def in_order(reports: Reports) -> tuple[JobReport, ...]:
    """Return the jobs: those left unsafe first, those given up last, else in their own order."""
    return tuple(
        sorted(reports.values(), key=lambda each: (each.left.is_safe, bool(each.job.given_up)))
    )


def _uri(report: JobReport) -> str:
    return job_uri(report.job.job)


def _card(kit: Kit, project: ReadProject, report: JobReport) -> CardView:
    words, left = kit.job, left_view(kit, report)
    machine = project.library.machines.get(report.job.machine)
    day = last_day(report)
    key = "card_left" if day else "card_unwritten"
    return CardView(
        title=machine_title(machine, report.job.machine),
        purpose=report.job.purpose,
        href=link(JOBS, _uri(report)),
        is_safe=left.is_safe,
        mark=left.mark,
        left=words[key].format(day=day or report.job.taken_in),
        left_word=left.word,
        stage=last_proved(report) or words["card_nothing"],
        money=words["spent_of"].format(
            spent=say_money(report.money.spent, kit.settings.currency),
            most=say_money(report.money.most, kit.settings.currency),
        ),
        stop=_stop(words, report),
        next_label=words["card_next" if left.is_safe else "card_first"],
        next=_next(kit, report) if left.is_safe else left.before[0],
    )


def _stop(words: Mapping[str, str], report: JobReport) -> str:
    if report.job.given_up:
        return words["given_up_short"].format(day=report.job.given_up)
    return words["stop_short"] if report.money.is_past_stop else ""


def _next(kit: Kit, report: JobReport) -> str:
    if not report.next_checks:
        return kit.job["card_no_next"]
    first = report.next_checks[0]
    return f"{first.title} · {say_minutes(kit.words, first.minutes)}"
