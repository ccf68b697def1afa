"""An answer to a reading is `below`, `within`, `above`, `open`, or limits of its own.

Whoever stands at the machine has a number on the display and nothing else. `looks fine` is no
answer to a number; `under 1 ohm` is.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.answers import WORDS, share_of
from pullcord.readings.asked import asked_of
from pullcord.readings.unit import ReadingError
from pullcord.rules.example import example

ID = "unreadable-answer"

FAILING = example("""
steps:
  casing:
    title: Measure the coil
    do: Unplug the coil and measure across it.
    reading: {quantity: resistance, at: the coil's two pins}
    answers:
      looks fine: cause air-leak
      over 1 ohm: cause dry-casing
""")

MENDED = FAILING.replace("looks fine", "up to 1 ohm")


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every answer of a reading that says no reading."""
    for asked in asked_of(procedure):
        for answer in asked.answers:
            if answer in WORDS:
                continue
            try:
                share_of(answer, asked.answers, None, asked.reading.quantity)
            except ReadingError as error:
                place = ("steps", asked.name, "answers", answer)
                yield Flaw(place, str(error), error.mend, is_key=True)
