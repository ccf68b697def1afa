"""Every answer of a reading can be given.

Nothing reads below `under 1 ohm`, and nothing above `open`. Such an answer is a slip, or the limits
are not what the author had in mind. Where the machine's sheet decides (`limits`), `below` and
`above` may stand all the same: a sheet may have the end that the general limits lack, and a page on
which the answer cannot be given leaves it out.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.answers import WORDS, fault_words
from pullcord.readings.asked import Asked, asked_of, held_against
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
                if fault.kind == "never" and not _may_be_given(asked, fault.answers[0]):
                    yield Flaw(
                        ("steps", asked.name, "answers", fault.answers[0]),
                        fault_words(fault, held.unit),
                        "take the answer out, or change the limits",
                        is_key=True,
                    )


def _may_be_given(asked: Asked, answer: str) -> bool:
    """Say whether a machine's sheet may leave a reading for the answer."""
    return asked.reading.limits is not None and answer in WORDS
