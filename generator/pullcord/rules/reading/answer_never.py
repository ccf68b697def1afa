"""Every answer of a reading can be given.

Nothing reads below `under 1 ohm`, and nothing above `open`. Such an answer is a slip, or the limits
are not what the author had in mind.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.answers import fault_words
from pullcord.readings.asked import asked_of, held_against
from pullcord.rules.example import example

ID = "answer-never"

FAILING = example("""
steps:
  casing:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: its two pins, general: under 1 ohm, source: common practice}
    answers:
      below: cause dry-casing
      within: cause air-leak
      above: cause dry-casing
""")

MENDED = FAILING.replace("      below: cause dry-casing\n", "")


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every answer that the procedure's own limits leave no reading for."""
    for asked in asked_of(procedure):
        for held in held_against(asked, procedure, None):
            for fault in held.faults:
                if fault.kind == "never":
                    yield Flaw(
                        ("steps", asked.name, "answers", fault.answers[0]),
                        fault_words(fault, held.unit),
                        "take the answer out, or change the limits",
                        is_key=True,
                    )
