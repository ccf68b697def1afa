"""Parts: what may be bought and what waits, and what has been paid for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from pullcord.analysis.job.report import JobReport, Purchase
from pullcord.pages.job.words import say_money, stage_titles
from pullcord.pages.kit import Kit


@dataclass(frozen=True)
class WantedView:
    """One thing wanted."""

    title: str
    price: str
    facts: tuple[str, ...]
    """Its part number, what it is for, what it waits for."""
    why: str
    note: str


@dataclass(frozen=True)
class WantedGroup:
    """Things wanted that stand together."""

    title: str
    is_waiting: bool
    wanted: tuple[WantedView, ...]
    nothing: str
    """What stands there when nothing does."""


@dataclass(frozen=True)
class PaidView:
    """One line of what has been paid."""

    title: str
    price: str
    facts: tuple[str, ...]
    """Its part number, when and for what it was bought."""


@dataclass(frozen=True)
class PartsView:
    """All parts of a job."""

    first: str
    """What goes before any order: a stop line that is passed; empty otherwise."""
    groups: tuple[WantedGroup, ...]
    """What may be bought now, then what waits; none when nothing is wanted."""
    paid: tuple[PaidView, ...]
    total: str


def parts_view(kit: Kit, report: JobReport) -> PartsView:
    """Return the parts of a job in the order to buy, and those paid for, the oldest first."""
    paid = list(_paid(kit, report))
    return PartsView(
        first=kit.job["buy_stop"] if report.money.is_past_stop else "",
        groups=tuple(_groups(kit, report)),
        paid=tuple(view for _, view in paid),
        total=say_money(sum((price for price, _ in paid), Decimal(0)), kit.settings.currency),
    )


def _groups(kit: Kit, report: JobReport) -> Iterator[WantedGroup]:
    for key, may_buy in (("buy_now", True), ("buy_waits", False)):
        held = tuple(
            _wanted(kit, report, each) for each in report.purchases if each.may_buy is may_buy
        )
        if held or (report.purchases and may_buy):
            yield WantedGroup(kit.job[key], not may_buy, held, kit.job["buy_none"])


def _wanted(kit: Kit, report: JobReport, purchase: Purchase) -> WantedView:
    words, wanted = kit.job, purchase.wanted
    facts = [words["buy_for"].format(stage=stage_titles(report, (wanted.serves,)))]
    if wanted.number:
        facts.insert(0, words["part_number"].format(number=wanted.number))
    if purchase.waits_for:
        stages = stage_titles(report, purchase.waits_for)
        facts.append(words["buy_waits_for"].format(stages=stages))
    return WantedView(
        title=wanted.title,
        price=say_money(wanted.price, kit.settings.currency),
        facts=tuple(facts),
        why=purchase.why,
        note=wanted.note or "",
    )


def _paid(kit: Kit, report: JobReport) -> Iterator[tuple[Decimal, PaidView]]:
    words, currency = kit.job, kit.settings.currency
    before = report.job.spent_before
    if before:
        yield before, PaidView(words["parts_before"], say_money(before, currency), ())
    for _, entry in reversed(report.newest_first):
        for part in entry.parts:
            facts = [words["part_number"].format(number=part.number)] if part.number else []
            facts.append(entry.date[:10])
            if part.serves:
                stage = stage_titles(report, (part.serves,))
                facts.append(words["buy_for"].format(stage=stage))
            yield part.price, PaidView(part.title, say_money(part.price, currency), tuple(facts))
