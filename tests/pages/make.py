"""Small procedures and the pages made from them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

import yaml
from markupsafe import Markup

from pullcord.model.job import Job
from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.model.procedure import Library, Procedure
from pullcord.pages import site_pages
from pullcord.pages.chart import ChartView
from pullcord.pages.kit import read_kit
from pullcord.pages.order import reading_order
from pullcord.pages.page import Page
from pullcord.pages.procedure_page import procedure_page
from pullcord.pages.settings import Settings
from pullcord.pages.sheets import SheetsView
from pullcord.pages.standing import standings
from pullcord.pages.subject import Subject
from pullcord.pages.way import Signposts
from pullcord.readings import parse_meter
from pullcord.safety.notes import safety_notes
from tests.pages.tree import Element, read_html

SETTINGS = Settings(build_date="2026-03-01", revision="a1b2c3d")
KIT = read_kit(SETTINGS)
NO_CHART = ChartView(Markup("<svg></svg>"), SheetsView("upright", ()))
FILES = re.compile(r"(^|/)(print/.+\.pdf|one-file/.+\.html|binder\.html)$")
"""Links to what is no page but lies beside the pages."""
DIGEST = "0123456789ab"
SHEET_DIGEST = "ba9876543210"
IN_GENERAL = Subject(parse_meter(MeterSheet()))

NO_SPARK = """\
procedure: no-spark
title: No spark
symptom: The engine spins but there is no spark.
also-said: [it will not fire, dead ignition]
about: For one-cylinder engines with a magneto.
fits: {ignition: [magneto, points], strokes: two}
before: [The tap is shut.]
tools:
  meter: {title: Multimeter, instead: A test lamp does not do.}
proves: Spark on its own parts
mistakes: [Buying a coil before the stop wire was unplugged.]
start: plug
causes:
  fouled: {title: Plug fouled, remedy: Fit a new plug., odds: 6, odds-from: common practice,
           parts: 5, minutes: 5}
  dripping: {title: Tap drips, remedy: Fit a new tap., opens: petrol, closes: petrol, odds: 2}
  coil: {title: Coil open, remedy: Fit a new coil., odds: 12}
steps:
  plug:
    title: Try a plug
    do: Lay a new plug on bare metal and spin the engine.
    makes: [spark, cranking]
    ask: What do you see?
    answers: {a blue spark: cause fouled, nothing: step look, petrol drips: cause dripping}
  look:
    title: Look at the leads
    do: Look at the leads.
    why: A chafed lead touches the frame.
    then: step coil
  coil:
    title: Measure the coil
    do: Measure across the coil.
    needs: meter
    near: high-voltage
    minutes: 10
    reading: {quantity: resistance, at: source wire, against: bare metal, limits: source-coil,
              general: 200-300 ohm, source: common practice}
    answers: {below: cause coil, within: done, above: cause coil, open: procedure wont-idle}
"""

WONT_IDLE = """\
procedure: wont-idle
title: Will not idle
symptom: It dies when you let go.
about: For any carburettor.
start: jet
causes:
  blocked: {title: Idle jet blocked, remedy: Blow it out., near: petrol}
steps:
  jet:
    title: Look at the jet
    do: Take the jet out.
    opens: petrol
    ask: Is it blocked?
    answers: {it is: cause blocked, it is not: step shut}
  shut: {title: Put it back, do: Put the jet back and wipe up., closes: petrol, clears: vapour,
         then: done}
"""


PINNED = NO_SPARK.replace(
    "at: source wire, against: bare metal", "at: unit.source, against: unit.ground"
)

BIKE = """\
machine: old-bike
title: Old bike
kind: farm-bike
ignition: points
fuel: carburettor
strokes: two
drive: Chain
about: Stands behind the barn.
altitude-metres: 640
values:
  source-coil: {title: Source coil, limits: 225-275 ohm, winding: copper, source: measured,
                note: Read 250 ohm in May.}
  plug-gap: {limits: 0.6-0.7 mm, source: a leaflet}
  tyre-size: {value: 21x7-10, source: the tyre}
  oil-volume: {title: Oil, quantity: volume}
  chain-pitch: {value: 12.7 mm, source: measured}
  bore: {value: 40 mm, source: measured}
  stroke: {value: 34 mm, source: measured}
connectors:
  unit:
    title: Plug of the unit
    rows: 1
    columns: 3
    blanks: a3
    note: Behind the seat.
    pins:
      source: {at: a1, wire: BK/RD, function: Source coil,
               expect: [{against: unit.ground, value: source-coil}]}
      ground: {at: a2, wire: GN, function: Ground, note: Corrodes first.}
"""

PUMP = """\
machine: old-pump
title: Old pump
kind: pump
ignition: points
"""

CART = """\
machine: cart
title: Cart
kind: cart
ignition: battery-coil
"""


@dataclass(frozen=True)
class Read:
    """A procedure as read from a file."""

    procedure: Procedure
    path: Path
    digest: str


@dataclass(frozen=True)
class ReadSheet:
    """A machine sheet as read from a file."""

    machine: Machine
    path: Path
    digest: str


@dataclass(frozen=True)
class ReadLog:
    """A job log as read from a file."""

    job: Job
    path: Path
    digest: str


@dataclass(frozen=True)
class Shelf:
    """What pages need of a project."""

    files: Mapping[str, Read]
    library: Library
    machines: Mapping[str, ReadSheet]
    jobs: Mapping[str, ReadLog] = field(default_factory=dict)


def procedure(text: str) -> Procedure:
    """Make a procedure from a file's text."""
    return Procedure.model_validate(_data(text))


def machine(text: str) -> Machine:
    """Make a machine sheet from a file's text."""
    return Machine.model_validate(_data(text))


def _data(text: str) -> Any:
    # Every scalar stays text, as in a file that was read.
    return yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506


def shelf(
    *procedures: Procedure, machines: tuple[Machine, ...] = (), meter: MeterSheet | None = None
) -> Shelf:
    """Make a project of some procedures and machines."""
    by_name = {each.procedure: each for each in procedures}
    sheets = {each.machine: each for each in machines}
    return Shelf(
        files={
            name: Read(each, Path(f"procedures/{name}.yaml"), DIGEST)
            for name, each in by_name.items()
        },
        library=Library(procedures=by_name, machines=sheets, meter=meter or MeterSheet()),
        machines={
            name: ReadSheet(each, Path(f"machines/{name}.yaml"), SHEET_DIGEST)
            for name, each in sheets.items()
        },
    )


def pages_of(
    *procedures: Procedure,
    machines: tuple[Machine, ...] = (),
    meter: MeterSheet | None = None,
    settings: Settings = SETTINGS,
) -> dict[str, Page]:
    """Make every page, by address."""
    project = shelf(*procedures, machines=machines, meter=meter)
    return {page.src_uri: page for page in site_pages(project, settings)}


def posts_of(project: Shelf, name: str) -> Signposts:
    """Make the signposts of a procedure's general page."""
    own = project.files[name].procedure
    return Signposts(own, project.library, reading_order(own), KIT.words, IN_GENERAL)


@cache
def example_pages() -> Mapping[str, Page]:
    """Make the pages of the two examples."""
    return pages_of(procedure(NO_SPARK), procedure(WONT_IDLE))


@cache
def shed_pages() -> Mapping[str, Page]:
    """Make the pages of the two examples, with a bike, a pump that nobody knows, and a cart.

    The first procedure, whose probes go to pins, does not fit the cart.
    """
    machines = tuple(machine(text) for text in (BIKE, PUMP, CART))
    return pages_of(procedure(PINNED), procedure(WONT_IDLE), machines=machines)


def step_of(uri: str, step: str) -> Element:
    """Return a step's section on a page of the shed."""
    return tree_of(shed_pages()[uri]).by_id(f"step-{step}")


@cache
def tree_of(page: Page) -> Element:
    """Read a page."""
    return read_html(page.html)


def no_spark_page(text: str = NO_SPARK) -> Element:
    """Make and read the page of the first example, or of a changed one; nothing is in its chart."""
    project = shelf(procedure(text), procedure(WONT_IDLE))
    notes = safety_notes(project.library)["no-spark"]
    read = project.files["no-spark"]
    posts = posts_of(project, "no-spark")
    standing = standings(project.library)["no-spark"]
    return tree_of(procedure_page(KIT, read, posts, notes, NO_CHART, Markup("{}"), standing))
