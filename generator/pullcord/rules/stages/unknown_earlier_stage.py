"""A stage comes after stages that are there.

A stage that waits for one nobody knows is never proved.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.nearest import did_you_mean
from pullcord.model.procedure import Library
from pullcord.model.stage import StageList
from pullcord.rules.example_job import STAGES, stages_example

ID = "unknown-earlier-stage"

MENDED = stages_example(STAGES)

FAILING = stages_example(STAGES.replace("after: taken-in", "after: take-in"))


def check(stages: StageList, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every name in `after` that is not in the list."""
    for name, stage in stages.stage.items():
        for number, before in enumerate(stage.after):
            if before not in stages.stage:
                mend = did_you_mean(before, stages.stage, "name a stage of this list")
                yield Flaw(("stage", name, "after", number), f"there is no stage `{before}`", mend)
