"""The shed page: one card a job, those left unsafe first, each read at a glance."""

from __future__ import annotations

from dataclasses import replace

from pullcord.pages.jobs_page import job_links, jobs_page
from tests.pages.jobs import LEFT_SAFE, MONEY, Bench, job, report
from tests.pages.make import KIT, tree_of

SAFE = report(job().model_copy(update={"job": "a-safe"}), left=LEFT_SAFE)
UNSAFE = report(job().model_copy(update={"job": "b-unsafe"}))
GIVEN_UP = report(
    job().model_copy(update={"job": "a-given-up", "given_up": "2026-03-20"}), left=LEFT_SAFE
)
PAST = report(
    job().model_copy(update={"job": "c-past"}),
    left=LEFT_SAFE,
    money=replace(MONEY, is_past_stop=True),
    next_checks=(),
)
REPORTS = {each.job.job: each for each in (GIVEN_UP, SAFE, UNSAFE, PAST)}
CARDS = tree_of(jobs_page(KIT, Bench().shelf, REPORTS)).all("pc-card")


def test_unsafe_ones_come_first_and_given_up_ones_last() -> None:
    """Else they stand in their own order."""
    assert [card.attrs["href"] for card in CARDS] == [
        "jobs/b-unsafe.html", "jobs/a-safe.html", "jobs/c-past.html", "jobs/a-given-up.html",
    ]  # fmt: skip
    assert ["pc-card--unsafe" in card.classes for card in CARDS] == [True, False, False, False]


def test_an_unsafe_card_says_what_to_see_to_first() -> None:
    """Word and sign, stage, money, and the gravest thing instead of the next check."""
    assert CARDS[0].text == (
        "Old bike Left on 2026-03-01: ! NOT left safe Proved so far: Safe to work on "
        "Money: 0.30 spent, 100.00 at most First: The gravest thing. To carry ladders again."
    )


def test_a_safe_card_says_the_next_check() -> None:
    """With its time."""
    assert "✓ left safe" in CARDS[1].text
    assert "Next: Measure the coil · 10 min" in CARDS[1].text


def test_a_stop_line_and_a_job_given_up_are_said() -> None:
    """And that there is nothing to check."""
    assert "the stop line is passed Next: nothing to check next" in CARDS[2].text
    assert "given up on 2026-03-20" in CARDS[3].text


def test_the_home_page_names_every_job() -> None:
    """In the same order, with how it was left."""
    links = job_links(KIT, Bench().shelf, REPORTS, "index.md")
    assert [link.href for link in links] == [card.attrs["href"] for card in CARDS]
    assert links[0].says == "! NOT left safe · The gravest thing."
