"""Nothing is bought for chain, sprockets or tyres before the engine runs and its tank holds.

Common practice: a machine with new tyres whose engine never ran is worth no more than before. In a
list that has the stages `runs` and `fuel-proved`, the stages `drives`, `stops` and `controls-sound`
come after both, at once or by way of others.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.job.stages import all_before
from pullcord.finding import Flaw
from pullcord.model.procedure import Library
from pullcord.model.stage import StageList

ID = "drive-before-running"

DRIVE = ("drives", "stops", "controls-sound")
FIRST = ("runs", "fuel-proved")

MENDED = {
    "shed-stages.yaml": """\
stages: shed-stages
stage:
  fuel-proved: {title: Fuel proved, means: Its own tank holds and lets petrol through.}
  runs: {title: Runs, means: It runs on its own parts., after: fuel-proved}
  drives: {title: Drives, means: It pulls under load., after: runs}
"""
}

FAILING = {
    name: text.replace("under load., after: runs}", "under load., after: fuel-proved}")
    for name, text in MENDED.items()
}


def check(stages: StageList, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every drive stage that does not come after both."""
    for name in DRIVE:
        if name in stages.stage:
            before = all_before(stages.stage, tuple(stages.stage[name].after))
            for first in FIRST:
                if first in stages.stage and first not in before:
                    message = f"parts for `{name}` could be bought before `{first}` is proved"
                    yield Flaw(("stage", name), message, f"add `{first}` to its `after`")
