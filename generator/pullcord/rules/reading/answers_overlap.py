"""No reading has two answers.

`1-3 ohm` and `3-5 ohm` both hold 3 ohm, and two people would go two ways. Leave one end out of one
of them: `over 3 to 5 ohm`. Where `open` is an answer, `above` and `over 3 ohm` stop short of it by
themselves.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.answers import fault_words
from pullcord.readings.asked import asked_of, held_against
from pullcord.rules.example import example

ID = "answers-overlap"

FAILING = example("""
steps:
  casing:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: the coil's two pins}
    answers:
      up to 3 ohm: cause air-leak
      3-5 ohm: cause dry-casing
      over 5 ohm: cause dry-casing
""")

MENDED = FAILING.replace("3-5 ohm", "over 3 to 5 ohm")


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every stretch of readings with two answers."""
    for asked in asked_of(procedure):
        for held in held_against(asked, procedure, library):
            overlaps = [fault for fault in held.faults if fault.kind == "overlap"]
            for overlap in overlaps:
                yield Flaw(
                    ("steps", asked.name, "answers", overlap.answers[1]),
                    f"{fault_words(overlap, held.unit)}{held.where}",
                    "leave it out of one of them, as in `over 3 to 5 ohm`",
                    is_key=True,
                )
            if overlaps:
                break
