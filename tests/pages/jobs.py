"""Small jobs with hand-made reports, and the pages made from them."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path
from typing import Any

import yaml

from pullcord.analysis.job.report import (
    JobReport,
    LeftState,
    MoneyState,
    NextCheck,
    NextProof,
    Point,
    Proof,
    Purchase,
    Series,
    StageState,
)
from pullcord.model.job import Job, Wanted
from pullcord.model.stage import Stage
from pullcord.pages.job_page import job_page
from pullcord.pages.page import Page
from pullcord.pages.subject import Subject, subject_of
from pullcord.readings.interval import closed
from pullcord.readings.unit import UNITS
from tests.pages.make import (
    BIKE,
    IN_GENERAL,
    KIT,
    NO_SPARK,
    ReadLog,
    Shelf,
    machine,
    procedure,
    shelf,
)

DIGEST = "feedfacecafe"
SPRING = """\
job: spring
machine: old-bike
taken-in: 2026-02-14
purpose: To carry ladders again.
most: 100
spent-before: 0.10
wanted:
  chain: {title: Drive chain, price: 38.10, serves: drives, number: C-78, note: Measure first.}
  cap: {title: Plug cap, price: 6, serves: spark}
log:
  - date: 2026-02-21
    did: Wheels blocked.
    drains: petrol
    shows: safe
    minutes: 30
  - date: 2026-03-01 18:00
    procedure: no-spark
    step: coil
    answer: within
    reading: 250 ohm
    celsius: 12
    fits: [bypass, test-lead]
    parts:
      - {title: Tape, price: 0.20, number: T-1, serves: spark}
    note: Bypass still on.
    photo: pictures/coil.jpg
"""
LEFT_UNSAFE = LeftState(
    conditions=("test-lead", "bypass"),
    fitted=("test-lead", "bypass"),
    drained=("petrol", "brake-fluid"),
    off=("battery", "plug-hole"),
    is_safe=False,
    before_touching=("The gravest thing.", "The lesser thing."),
)
LEFT_SAFE = LeftState((), (), ("petrol",), (), True, ())


def job(text: str = SPRING) -> Job:
    """Make a job from a file's text."""
    data: Any = yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506
    return Job.model_validate(data)


def stage(name: str, title: str, proof: Proof = "not yet", since: str | None = None) -> StageState:
    """Make the state of a stage."""
    record = Stage.model_validate({"title": title, "means": f"{title} it is.", "source": "a trial"})
    return StageState(name, record, proof, since, None if since is None else 0, f"Why {name}.")


def point(day: str, amount: float | None, text: str, verdict: Any = "within") -> Point:
    """Make a reading."""
    return Point(day, 0, amount, text, 0.0 if amount is None else 2.0, verdict)


SERIES = Series(
    name="source-coil",
    title="Source coil",
    unit=UNITS["ohm"],
    limits=closed(Decimal(225), Decimal(275)),
    points=(
        point("2026-02-21", 250.0, "250 ohm"),
        point("2026-03-01 18:00", 274.0, "274 ohm", "too close"),
        point("2026-03-08", 301.0, "301 ohm", "outside"),
        point("2026-03-15", None, "OL", "outside"),
    ),
    drift="It has gone up by 51 ohm.",
)
MONEY = MoneyState(
    most=Decimal(100),
    spent=Decimal("0.30"),
    hours=3.25,
    expected=Decimal("44.10"),
    low=Decimal("38.10"),
    high=Decimal("90.00"),
    at_risk=Decimal("6.20"),
    is_past_stop=False,
    why="A sentence about the sum.",
)
WANTED_CHAIN = Wanted.model_validate(
    {"title": "Drive chain", "price": "38.10", "serves": "drives", "number": "C-78",
     "note": "Measure first."}
)  # fmt: skip
WANTED_CAP = Wanted.model_validate({"title": "Plug cap", "price": "6", "serves": "spark"})


def report(of: Job | None = None, **changes: Any) -> JobReport:
    """Make a report; anything in it may be given."""
    own = of or job()
    held: dict[str, Any] = {
        "job": own,
        "stages": (
            stage("safe", "Safe to work on", "proved", "2026-02-21"),
            stage("spark", "Spark proved", "taken back", "2026-03-01"),
            stage("drives", "Drives"),
        ),
        "left": LEFT_UNSAFE,
        "next_checks": (
            NextCheck("no-spark", "coil", "Measure the coil", 10, ("Multimeter",), "Why now."),
            NextCheck("nowhere", "step", "A step of nowhere", 5, (), "Why then."),
        ),
        "proofs": (NextProof("spark", Decimal(6), 0.08, "Why first."),
                   NextProof("drives", Decimal(0), 0, "Why second.")),
        "purchases": (
            Purchase("cap", WANTED_CAP, True, (), "It may be bought."),
            Purchase("chain", WANTED_CHAIN, False, ("spark",), "It must wait."),
        ),
        "money": MONEY,
        "series": (SERIES,),
        "newest_first": tuple(reversed(tuple(enumerate(own.log)))),
    }  # fmt: skip
    return JobReport(**(held | changes))


@dataclass(frozen=True)
class Bench:
    """A shelf with one job, and the page made from its report."""

    report: JobReport = field(default_factory=report)
    path: Path = Path("jobs/spring.yaml")
    has_sheet: bool = True
    kit: Any = KIT

    @property
    def shelf(self) -> Shelf:
        """Return the project, with the job in it."""
        held = shelf(procedure(NO_SPARK), machines=(machine(BIKE),) if self.has_sheet else ())
        log = ReadLog(self.report.job, self.path, DIGEST)
        return Shelf(held.files, held.library, held.machines, {"spring": log})

    @property
    def subject(self) -> Subject:
        """Return the job's machine."""
        if not self.has_sheet:
            return IN_GENERAL
        return subject_of(machine(BIKE), "ba9876543210", IN_GENERAL.meter)

    @property
    def page(self) -> Page:
        """Return the job's page."""
        shelf = self.shelf
        return job_page(self.kit, shelf, shelf.jobs["spring"], self.report, self.subject)
