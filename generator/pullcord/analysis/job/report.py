"""Everything there is to say about one job, as plain data for whoever prints it.

Money is `Decimal`, in the shop's own money. Sentences are whole, ready to be printed.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from pullcord.model.job import Entry, Job, Wanted
from pullcord.model.stage import Stage
from pullcord.readings.interval import Interval
from pullcord.readings.unit import Unit

Proof = Literal["proved", "not yet", "taken back"]


@dataclass(frozen=True)
class StageState:
    """How far one stage is."""

    name: str
    stage: Stage
    proof: Proof
    since: str | None
    """The day of the entry that decided it; None while nothing has been said about it."""
    entry: int | None
    """The position of that entry in the log, counted from 0."""
    why: str
    """One sentence: what proved it, what took it back, or what it waits for."""


@dataclass(frozen=True)
class LeftState:
    """How the machine stands after the last entry."""

    conditions: tuple[str, ...]
    """Identifiers of `safety.vocabulary.CONDITIONS` that hold, those to be seen to first."""
    fitted: tuple[str, ...]
    """What is fitted for testing and not off again: the words of `model.action.Fitting`."""
    drained: tuple[str, ...]
    """Liquids that are out."""
    off: tuple[str, ...]
    """What is disconnected, disabled or open, in the words of the verbs' things."""
    is_safe: bool
    """Whether nothing is left that must be seen to before one walks away, and petrol is out."""
    before_touching: tuple[str, ...]
    """Sentences: what to see to before touching it again, the gravest first."""


@dataclass(frozen=True)
class NextCheck:
    """One check worth doing next."""

    procedure: str
    step: str
    title: str
    minutes: float
    tools: tuple[str, ...]
    """Titles of the tools."""
    why: str


@dataclass(frozen=True)
class Purchase:
    """Something wanted, and whether it may be bought now."""

    name: str
    wanted: Wanted
    may_buy: bool
    waits_for: tuple[str, ...]
    """Stages that must be proved first, by name."""
    why: str
    """One sentence."""


@dataclass(frozen=True)
class NextProof:
    """A stage still to be proved, in the order in which proving costs least in the long run."""

    stage: str
    expected_cost: Decimal
    """What proving it is likely to cost: what is wanted for it, and parts by the causes' odds."""
    ends_here: float
    """The share, 0 to 1, of machines given up at this proof."""
    why: str
    """One sentence."""


@dataclass(frozen=True)
class MoneyState:
    """What it has cost, will cost and may cost."""

    most: Decimal
    spent: Decimal
    hours: float
    expected: Decimal
    """The likely cost from here to ready: the mean."""
    low: Decimal
    """One time in ten it costs no more than this from here."""
    high: Decimal
    """One time in ten it costs more than this from here."""
    at_risk: Decimal
    """Lost if the next proof fails: parts paid for stages not proved, and the proof's own cost."""
    is_past_stop: bool
    """Whether what is spent and the likely cost to ready together pass the most it may cost."""
    why: str
    """One sentence that says the sum, or the stop line in plain words."""


@dataclass(frozen=True)
class Point:
    """One reading."""

    date: str
    entry: int
    amount: float | None
    """In the series' unit; None for over-range.

    A copper winding's is turned to the temperature its limits hold at, where the shop's is known.
    """
    text: str
    """As it stands in the log."""
    half_width: float
    """The meter's uncertainty at this reading, in the series' unit, for 95 % coverage."""
    verdict: Literal["within", "outside", "too close", "not judged"]


@dataclass(frozen=True)
class Series:
    """Every reading of one value, over time."""

    name: str
    """The sheet value's name, or `procedure.step`."""
    title: str
    unit: Unit
    limits: Interval | None
    """What a good one reads, in the series' unit."""
    points: tuple[Point, ...]
    drift: str
    """One sentence when first and last differ by more than the meter explains, else empty."""


@dataclass(frozen=True)
class JobReport:
    """All of it."""

    job: Job
    stages: tuple[StageState, ...]
    left: LeftState
    next_checks: tuple[NextCheck, ...]
    """At most three."""
    proofs: tuple[NextProof, ...]
    purchases: tuple[Purchase, ...]
    """Those that may be bought first, each group in the order to buy."""
    money: MoneyState
    series: tuple[Series, ...]
    newest_first: tuple[tuple[int, Entry], ...]
    """Entries with their positions in the log, the newest first."""
