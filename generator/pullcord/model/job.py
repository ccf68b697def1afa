"""A job: one machine brought back to life, evening by evening. New entries go to the end.

job: damson-spring
machine: damson
taken-in: 2026-02-14
purpose: To carry ladders again before the thinning starts.
most: 250
wanted:
  chain: {title: Drive chain, price: 32, serves: drives}
log:
  - date: 2026-02-21
    procedure: no-spark
    step: source-coil
    answer: within
    reading: 252 ohm
    minutes: 20
"""

from __future__ import annotations

from calendar import monthrange
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, StringConstraints

from pullcord.model.action import Action
from pullcord.model.base import Line, Many, Name, Named, Record, Text, Words
from pullcord.model.money import Money

MOST_ENTRIES = 5000
Liquid = Literal["petrol", "oil", "coolant", "brake-fluid"]
DAY_PATTERN = r"^\d{4}-\d{2}-\d{2}$"
MOMENT_PATTERN = r"^\d{4}-\d{2}-\d{2}( ([01]\d|2[0-3]):[0-5]\d)?$"
PHOTO_PATTERN = r"^[A-Za-z0-9_-][A-Za-z0-9._-]*(/[A-Za-z0-9_-][A-Za-z0-9._-]*)*$"


def _real_day(text: str) -> str:
    year, month, day = int(text[:4]), int(text[5:7]), int(text[8:10])
    if not (year and 1 <= month <= 12 and 1 <= day <= monthrange(year, month)[1]):
        raise ValueError("there is no such day in the calendar")
    return text


Day = Annotated[str, StringConstraints(pattern=DAY_PATTERN), AfterValidator(_real_day)]
"""A day: `2026-03-01`."""

When = Annotated[
    str,
    StringConstraints(pattern=MOMENT_PATTERN),
    AfterValidator(_real_day),
]
"""A day, or a minute of it: `2026-03-01` or `2026-03-01 19:40`."""

Photo = Annotated[
    str,
    StringConstraints(max_length=200, pattern=PHOTO_PATTERN),
]
"""Where a picture lies, as seen from the log: plain names parted by `/`, never upward."""


class Part(Record):
    """A part that has been paid for."""

    title: Line
    """What it is."""
    price: Money
    """What was paid for it."""
    number: Line | None = None
    """Its part number."""
    serves: Name | None = None
    """The stage it was bought for."""
    wanted: Name | None = None
    """Its name in `wanted`, when it stood there: it is then no longer wanted."""


class Wanted(Record):
    """A part, or work by others, that the machine will need before it is ready."""

    title: Line
    """What it is."""
    price: Money
    """What it is likely to cost."""
    serves: Name
    """The stage it is for."""
    number: Line | None = None
    """Its part number."""
    minutes: Annotated[float, Field(ge=0, le=2880)] = 0
    """How long fitting it takes."""
    after: Many[Name] = ()
    """Further stages that must be proved before it is bought."""
    note: Text | None = None
    """Where it can be had, or what else may do."""


class Entry(Action):
    """What was done at one time. Its verbs say what was opened, fitted or taken off again.

    The effects of the step it names count too, so that they need not be written once more.
    """

    date: When
    """The day, or the minute."""
    procedure: Name | None = None
    """The procedure that was followed."""
    step: Name | None = None
    """The step of it that was done."""
    cause: Name | None = None
    """The cause of it that was found; beside `did` or `parts` its remedy counts as done."""
    value: Name | None = None
    """A value of the machine sheet that was read outside of any procedure."""
    answer: Words | None = None
    """The answer, as it stands in the procedure; `done` when it was gone through to its end."""
    reading: Line | None = None
    """What the instrument showed, with its unit: `250 ohm`, or `OL` for over-range."""
    celsius: Annotated[float, Field(ge=-40, le=60)] | None = None
    """How warm the shop was, in degrees Celsius."""
    did: Text | None = None
    """What was done, in one's own words."""
    parts: Annotated[tuple[Part, ...], Field(max_length=50)] = ()
    """Parts paid for."""
    minutes: Annotated[float, Field(ge=0, le=2880)] = 0
    """How long it took."""
    drains: Many[Liquid] = ()
    """What was let out and is out from here on."""
    fills: Many[Liquid] = ()
    """What was filled in again."""
    shows: Many[Name] = ()
    """Stages that were proved in a way no procedure asks for."""
    unproves: Many[Name] = ()
    """Stages that turn out not to hold."""
    note: Text | None = None
    """Anything the next evening should know."""
    photo: Photo | None = None
    """A picture."""


class Job(Record):
    """A whole job log."""

    job: Name
    """Its name: the file's name without `.yaml`, and the page's address."""
    machine: Name
    """The machine, by its sheet's name."""
    taken_in: Day
    """The day it came in."""
    purpose: Text
    """What it was taken in for: what it is meant to do when it is ready."""
    most: Money
    """The most it may cost, all in, in the shop's own money."""
    spent_before: Money = Decimal(0)
    """Money spent on it before the log begins."""
    hours_before: Annotated[float, Field(ge=0, le=10000)] = 0
    """Hours put into it before the log begins."""
    given_up: Day | None = None
    """The day it was given up."""
    note: Text | None = None
    """Anything about it as a whole."""
    leaves_out: Many[Name] = ()
    """Stages this machine has no use for: a pump on a skid neither drives nor brakes."""
    wanted: Named[Wanted] = Field(default_factory=dict, validate_default=True)
    """What it will need before it is ready, by name."""
    log: Annotated[tuple[Entry, ...], Field(max_length=MOST_ENTRIES)] = ()
    """Every entry, the oldest first."""
