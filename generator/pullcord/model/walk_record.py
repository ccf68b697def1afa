"""A walk record: the answers given on one machine, as the guided walk saves them to a file.

The tablet writes JSON, which is YAML too, so the reader of procedures reads it with the same
findings; a record may also be written by hand:

    walk: no-spark
    format: 1
    revision: 0123456789ab
    machine: quince
    shop-celsius: 10
    rounds:
      - began: 2026-03-01 19:20
        left: 2026-03-01 20:05
        at: step source-coil
        answers:
          - {step: cap-reading, answer: within, reading: 5.0 kohm, when: 2026-03-01 19:40}
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator, Field, StringConstraints

from pullcord.model.base import LINE_PATTERN, Line, Name, Record
from pullcord.model.target import TargetText

MOST_ANSWERS = 400
"""More than any procedure has steps on one way."""
MOST_ROUNDS = 40

Moment = Annotated[
    str, StringConstraints(pattern=r"^\d{4}-(0\d|1[0-2])-[0-3]\d ([01]\d|2[0-3]):[0-5]\d$")
]
"""A minute by the tablet's own clock and time zone: `2026-03-01 19:20`."""

Revision = Annotated[str, StringConstraints(pattern="^[0-9a-f]{12}$")]
"""First 12 hex digits of the SHA-256 of a procedure's file."""


Given = Annotated[str, StringConstraints(max_length=120, pattern=LINE_PATTERN)]
"""An answer as it stands in the procedure, or nothing."""


class WalkAnswer(Record):
    """One step that was answered."""

    step: Name
    """The step, by its name in the procedure."""
    answer: Given = ""
    """The answer, as it stands in the procedure; empty where the step asks nothing."""
    reading: Line | None = None
    """What the instrument showed, with its unit: `250 ohm`, or `OL` for over-range."""
    when: Moment
    """When it was answered."""


class WalkRound(Record):
    """One time through the procedure, from the first step to where it was left."""

    began: Moment
    """When the first step was shown."""
    left: Moment
    """When the last answer was given, or taken back."""
    at: TargetText
    """Where it was left, in the words of an answer: `step source-coil`, `cause plug`, `done`."""
    answers: Annotated[tuple[WalkAnswer, ...], Field(max_length=MOST_ANSWERS)] = ()
    """The answers that led there, first one first; what was taken back is not among them."""


def _some_rounds(rounds: tuple[WalkRound, ...]) -> tuple[WalkRound, ...]:
    # Asked after each round has been read, so that one wrong line is one finding.
    if not 1 <= len(rounds) <= MOST_ROUNDS:
        raise ValueError(f"a record has from 1 to {MOST_ROUNDS} rounds")
    return rounds


class WalkRecord(Record):
    """A whole record."""

    walk: Name
    """The procedure that was walked."""
    format: Literal["1"]
    """How the record is written; it counts up when an older reader could not read it."""
    revision: Revision
    """The procedure's revision when it was walked."""
    machine: Name | None = None
    """The machine, by its sheet's name; left out on a walk of the general page."""
    shop_celsius: Annotated[int, Field(ge=-40, le=60)] | None = None
    """How warm the shop was, in degrees Celsius, as far as anybody said."""
    rounds: Annotated[tuple[WalkRound, ...], AfterValidator(_some_rounds)]
    """Every time through, the latest last: a remedy is proved by going through it again."""

    @property
    def last(self) -> WalkRound:
        """Return the round that was left last."""
        return self.rounds[-1]
