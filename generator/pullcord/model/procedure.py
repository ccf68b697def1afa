"""A diagnostic procedure: a symptom, the causes it may have, and the steps that tell them apart."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from pullcord.model.action import Action
from pullcord.model.base import Line, Many, Name, Named, Record, Text, Worded
from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.model.money import Money
from pullcord.model.quantity import Quantity as Quantity
from pullcord.model.stage import Stage
from pullcord.model.target import TargetText

Minutes = Annotated[float, Field(ge=0, le=2880)]
Source = Line
"""Where a figure comes from: a named standard, the machine's sheet, or `common practice`."""


class Tool(Record):
    """Something a step needs in the hand."""

    title: Line
    """What to ask for in a shop."""
    instead: Text | None = None
    """What serves for less money, if anything does."""


class Reading(Record):
    """What an instrument is asked in a step."""

    quantity: Quantity
    """What is measured."""
    at: Line
    """Where the first probe goes: `connector.pin` of the machine sheet, or a place in words."""
    against: Line | None = None
    """Where the second probe goes."""
    limits: Name | None = None
    """The machine sheet's value that decides, such as `source-coil`."""
    general: Line | None = None
    """Limits for when the sheet does not say, such as `200-300 ohm`."""
    source: Source | None = None
    """Where the general limits come from."""


class Step(Action):
    """One thing to do, and, when it is a check, what is asked of the result."""

    as_: Name | None = None
    """A shared step this one is filled in from; keys written here take the place of its own."""
    title: Line
    """A few words: the heading, and the first line in the flowchart."""
    do: Text
    """The instruction."""
    why: Text | None = None
    """What it tells, for the curious."""
    needs: Many[Name] = ()
    """Tools, by their names in `tools`."""
    minutes: Minutes = 5
    """How long it takes someone who does it for the first time."""
    source: Source | None = None
    """Where figures in the instruction come from."""
    ask: Line | None = None
    """The question whose answers are listed below it."""
    reading: Reading | None = None
    """What is measured, when the answer comes from an instrument."""
    answers: Worded[TargetText] = Field(default_factory=dict, validate_default=True)
    """Each answer, in the words a person would use, and where it leads."""
    then: TargetText | None = None
    """Where to go on when there is nothing to ask."""
    tells: Worded[Many[Name]] = Field(default_factory=dict, validate_default=True)
    """For an answer, causes that give it too although the procedure does not look for them here."""
    after: Many[Name] | None = None
    """Steps that must be done before this one in any order; empty when it needs none."""


class Cause(Action):
    """One thing that can be wrong, and how it is put right."""

    as_: Name | None = None
    """A shared cause this one is filled in from; keys written here take the place of its own."""
    title: Line
    """What is wrong."""
    remedy: Text
    """What puts it right."""
    odds: Annotated[float, Field(gt=0, le=1000)] | None = None
    """How often it is this one, relative to the others; only the ratios count."""
    odds_from: Source | None = None
    """Where the odds come from."""
    parts: Money | None = None
    """What the parts cost, in the shop's own money."""
    minutes: Minutes | None = None
    """How long the remedy takes."""
    source: Source | None = None
    """Where figures in the remedy come from."""


class Fits(Record):
    """Which machines the procedure applies to; an empty list means any."""

    kind: Many[Name] = ()
    """Kinds of machine, such as `pump`."""
    ignition: Many[Literal["magneto", "points", "capacitor-discharge", "battery-coil", "any"]] = ()
    """How the spark is made."""
    fuel: Many[Literal["carburettor", "any"]] = ()
    """How the fuel is metered."""
    strokes: Many[Literal["two", "four"]] = ()
    """Two-stroke, four-stroke."""


class Signs(Record):
    """What one notices, one sign a line, as short as it can be said: `white smoke when warm`."""

    seen: Many[Line] = ()
    """What one sees."""
    heard: Many[Line] = ()
    """What one hears."""
    smelt: Many[Line] = ()
    """What one smells."""
    felt: Many[Line] = ()
    """What one feels at the starter, the lever, the grip or the wheel; never by touching hot,
    moving or live parts."""


class Procedure(Record):
    """A whole procedure file."""

    procedure: Name
    """Its name: the file's name without `.yaml`, and the page's address."""
    title: Line
    """A few words: the page's heading."""
    symptom: Text
    """What the owner sees, in one sentence."""
    also_said: Many[Line] = ()
    """Other words for the same symptom; they are searched."""
    signs: Signs = Signs()
    """The signs it goes with; the finder leads from them to the procedure."""
    about: Text
    """Who it is for, what it covers and what it does not."""
    fits: Fits = Fits()
    """Which machines it applies to."""
    before: Many[Text] = ()
    """What must be true or done before the first step."""
    tools: Named[Tool] = Field(default_factory=dict, validate_default=True)
    """Tools, by the names the steps use."""
    proves: Line | None = None
    """What has been shown when every check passes."""
    mistakes: Many[Text] = ()
    """The mistakes people make here."""
    start: Name
    """The step to begin with."""
    causes: Named[Cause]
    """Everything it can find, by name."""
    steps: Named[Step]
    """Every step, by name."""
    other_odds: Annotated[float, Field(ge=0, le=1000)] | None = None
    """How often it is none of the causes, on the same scale as their odds."""


class Library(Record):
    """Everything that is built together."""

    procedures: Named[Procedure]
    """Every procedure, by name."""
    unread: tuple[str, ...] = ()
    """Names of procedures whose files have errors: others may hand over to them all the same."""
    machines: Named[Machine] = Field(default_factory=dict, validate_default=True)
    """Every machine sheet, by name."""
    meter: MeterSheet = MeterSheet()
    """The shop's meter."""
    stages: Named[Stage] = Field(default_factory=dict, validate_default=True)
    """What a machine must have shown, by name, from the first stage to the last."""
    jobs: Named[Job] = Field(default_factory=dict, validate_default=True)
    """Every job, by name."""
