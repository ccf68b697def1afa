"""A figure says where it comes from.

A gap, a pressure or a torque that someone sets by the page should be one they can look up: a named
handbook or standard, the machine's sheet, or `common practice`. Times to wait, sizes of spanners
and the name of a battery are not figures in this sense.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from pullcord.finding import Flaw, Place
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "figure-without-source"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and fill the casing to 20 mm below the thread.
    ask: Does it stay there?
    answers:
      it stays: done
      it sinks: cause air-leak
      it never fills: cause dry-casing
"""
)

MENDED = FAILING.replace("    ask:", "    source: common practice\n    ask:")


_UNITS = (
    "mm|cm|m|µm|inch|inches|thou|kPa|MPa|hPa|Pa|bar|mbar|psi|kV|mV|V|volts?|mA|A|amps?|"
    "[kM]?ohms?|[kM]?Ω|°C|°F|degrees|N·m|Nm|N m|lbf?[-·]?(?:ft|in)|rpm|Hz|ml|cl|l|litres?|cc|cm³|"
    "µF|nF|kg|g|%|percent"
)
_NO_FIGURE = (
    r"[- ]*(?:spanner|socket|wrench|hex|key|bit|drill|bolt|nut|screw|thread|hose|pipe|wire|cable|"
    r"battery|bulb|lamp|system|side|outlet|range)"
)
FIGURE = re.compile(rf"\d[\d.]*\s?(?:{_UNITS})(?![\w²³])(?!{_NO_FIGURE})")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every instruction and remedy with a figure and no source."""
    for name, step in procedure.steps.items():
        if step.source is None:
            yield from _figures(("steps", name, "do"), step.do)
    for name, cause in procedure.causes.items():
        if cause.source is None:
            yield from _figures(("causes", name, "remedy"), cause.remedy)


def _figures(place: Place, text: str) -> Iterator[Flaw]:
    found = FIGURE.search(text)
    if found:
        yield Flaw(
            place,
            f"`{found.group()}` is a figure, and nothing says where it comes from",
            "add `source:` beside it, for instance `common practice`",
            word=found.group(),
        )
