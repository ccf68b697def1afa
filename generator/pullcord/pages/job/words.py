"""Small pieces of what the job pages say: money, things, hours."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal

from pullcord.analysis.job.report import JobReport
from pullcord.model.machine import Machine
from pullcord.pages.prose import plain

CENT = Decimal("0.01")


def say_money(amount: Decimal, currency: str) -> str:
    """Return an amount to the cent, with the project's currency behind it if it has one."""
    return f"{amount.quantize(CENT)} {currency}".strip()


def say_things(words: Mapping[str, str], kind: str, things: Iterable[str]) -> str:
    """Return things in plain words, one after the other: `thing_bypass` is `a bypass`."""
    return ", ".join(words.get(f"{kind}_{thing}", plain(thing)) for thing in things)


def say_hours(hours: float) -> str:
    """Return hours to a tenth: `12.5 h`."""
    return f"{round(hours, 1):g} h"


def machine_title(machine: Machine | None, name: str) -> str:
    """Return what the shed calls a machine; its name when it has no sheet."""
    return machine.title if machine else name


def last_day(report: JobReport) -> str:
    """Return the day of the last entry; empty while nothing has been written."""
    return report.newest_first[0][1].date[:10] if report.newest_first else ""


def stage_titles(report: JobReport, names: Iterable[str]) -> str:
    """Return the titles of stages, one after the other."""
    known = {state.name: state.stage.title for state in report.stages}
    return ", ".join(known.get(name, name) for name in names)
