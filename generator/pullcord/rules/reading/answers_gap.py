"""Every reading has an answer, from zero to over-range.

A meter will show whatever is there. If nothing is said about a reading under the limits, the person
who gets one stands in the shop with no way on. The finding names the readings that are left out.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.answers import fault_words
from pullcord.readings.asked import asked_of, held_against
from pullcord.rules.example import example

ID = "answers-gap"

FAILING = example("""
steps:
  casing:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: its two pins, general: 200-300 ohm, source: common practice}
    answers:
      within: cause air-leak
      above: cause dry-casing
""")

MENDED = FAILING.replace(
    "      within: cause air-leak",
    "      below: cause dry-casing\n      within: cause air-leak",
)

MEND = "add an answer for it: `below`, `above`, `open`, or limits of its own"
MEND_SHEET = (
    "write the sheet's limits one-sided, such as `up to 6 ohm`, if that is all the procedure asks; "
    "or add an answer for it: `below`, `above` or `open`"
)


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every stretch of readings without an answer."""
    for asked in asked_of(procedure):
        for held in held_against(asked, procedure, library):
            gaps = [fault for fault in held.faults if fault.kind == "gap"]
            for gap in gaps:
                yield Flaw(
                    ("steps", asked.name, "answers"),
                    f"{fault_words(gap, held.unit)}{held.where}",
                    MEND_SHEET if held.machine else MEND,
                )
            if gaps:
                break
