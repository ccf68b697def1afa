"""Small procedures and the pages made from them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml
from markupsafe import Markup

from pullcord.model.procedure import Library, Procedure
from pullcord.pages import site_pages
from pullcord.pages.chart import ChartView
from pullcord.pages.kit import read_kit
from pullcord.pages.page import Page
from pullcord.pages.procedure_page import procedure_page
from pullcord.pages.settings import Settings
from pullcord.pages.sheets import SheetsView
from pullcord.safety.notes import safety_notes
from tests.pages.tree import Element, read_html

SETTINGS = Settings(build_date="2026-03-01", revision="a1b2c3d")
KIT = read_kit(SETTINGS)
NO_CHART = ChartView(Markup("<svg></svg>"), SheetsView("upright", "#pc-chart-none", ()))
DIGEST = "0123456789ab"

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


@dataclass(frozen=True)
class Read:
    """A procedure as read from a file."""

    procedure: Procedure
    path: Path
    digest: str


@dataclass(frozen=True)
class Shelf:
    """What pages need of a project."""

    files: Mapping[str, Read]
    library: Library


def procedure(text: str) -> Procedure:
    """Make a procedure from a file's text."""
    # Every scalar stays text, as in a procedure file.
    data: Mapping[str, Any] = yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506
    return Procedure.model_validate(data)


def shelf(*procedures: Procedure) -> Shelf:
    """Make a project of some procedures."""
    by_name = {each.procedure: each for each in procedures}
    files = {
        name: Read(each, Path(f"procedures/{name}.yaml"), DIGEST) for name, each in by_name.items()
    }
    return Shelf(files, Library(procedures=by_name))


def pages_of(*procedures: Procedure, settings: Settings = SETTINGS) -> dict[str, Page]:
    """Make every page, by address."""
    return {page.src_uri: page for page in site_pages(shelf(*procedures), settings)}


@cache
def example_pages() -> Mapping[str, Page]:
    """Make the pages of the two examples."""
    return pages_of(procedure(NO_SPARK), procedure(WONT_IDLE))


@cache
def tree_of(page: Page) -> Element:
    """Read a page."""
    return read_html(page.html)


def no_spark_page(text: str = NO_SPARK) -> Element:
    """Make and read the page of the first example, or of a changed one; nothing is in its chart."""
    project = shelf(procedure(text), procedure(WONT_IDLE))
    notes = safety_notes(project.library)["no-spark"]
    read = project.files["no-spark"]
    return tree_of(procedure_page(KIT, read, project.library, notes, NO_CHART))
