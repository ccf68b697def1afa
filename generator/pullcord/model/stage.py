"""The stages a machine goes through, and which evidence proves each of them.

stages: small-machine
stage:
  spark-proved:
    title: Spark proved
    means: A snappy blue spark at a known-good plug, with the machine's own ignition.
    after: safe-to-work-on
    proved-by:
      - {procedure: no-spark, step: known-good-plug, answers: a snappy blue spark}
    looked-for-in: no-spark
    not-while: [bypass, borrowed-part]
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from pullcord.model.action import Fitting
from pullcord.model.base import Line, Many, Name, Named, Record, Text, Words


class Evidence(Record):
    """What in a log proves a stage. Any other answer at the same place takes the proof back."""

    procedure: Name | None = None
    """The procedure; alone, it proves the stage when it is gone through to `done`."""
    step: Name | None = None
    """A step of it, whose answer decides."""
    answers: Many[Words] = ()
    """The answers of that step that prove the stage."""
    value: Name | None = None
    """Instead of a procedure: a value of the machine sheet that was read within its limits."""
    job: Literal["taken-in"] | None = None
    """Instead of both: the job log itself, with its day, its purpose and the most it may cost."""


class Stage(Record):
    """One thing a machine must have shown before the next is worth money."""

    title: Line
    """A few words."""
    means: Text
    """What has been shown when it is proved."""
    after: Many[Name] = ()
    """Stages that must be proved first; until then no part that serves this stage is bought."""
    proved_by: tuple[Evidence, ...] = ()
    """Any one of these proves it; without any, only an entry that says so by `shows`."""
    looked_for_in: Many[Name] = ()
    """Procedures to go through while it is not proved, the first one first."""
    not_while: Many[Fitting] = ()
    """What must not be fitted: with it on, the evidence is not of the machine's own parts."""
    ends_here: Annotated[float, Field(ge=0, le=100)] = 0
    """Of 100 neglected machines that come this far, how many are given up at this proof."""
    source: Line | None = None
    """Where that figure and the order come from."""


class StageList(Record):
    """A whole file of stages."""

    stages: Name
    """Its name: the file's name without `.yaml`."""
    stage: Named[Stage]
    """Every stage, by name, from the first to the last."""
