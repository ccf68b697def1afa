"""Nothing is bought for chain, sprockets or tyres before the engine runs and its tank holds.

Common practice. Held by the shipped list of stages, for every log: the reference below knows
nothing of how proofs are folded, it only looks for the evidence anywhere in the log.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.analysis.job.read import read_job_report
from tests.analysis.job.making import HEAD, make_job, make_library

SHIPPED = Path(__file__).parents[3] / "procedures/shared/small-machine-stages.yaml"
DRIVE = ("drives", "stops", "controls-sound")
WANTED = "wanted:\n" + "".join(
    f"  for-{stage}: {{title: A part, price: 30, serves: {stage}}}\n" for stage in DRIVE
)
SAFE, SPARK, FUEL, RUN = (
    "{date: 2026-02-01, shows: safe-to-work-on}",
    "{date: 2026-02-02, procedure: no-spark, answer: done}",
    "{date: 2026-02-03, procedure: leaks-fuel, answer: done}",
    "{date: 2026-02-04, procedure: wont-idle, answer: done}",
)


def may_buy(*log: str) -> set[str]:
    """Return the stages something may be bought for, by the shipped stages."""
    stages = SHIPPED.read_text(encoding="utf-8")
    shed = make_library(stages=stages).procedures
    names = {"no-spark": "spark", "leaks-fuel": "leak", "wont-idle": "idle"}
    procedures = {
        name: shed[small].model_copy(update={"procedure": name}) for name, small in names.items()
    }
    job = make_job(*log, head=HEAD + WANTED)
    found = read_job_report(job, make_library(job, stages=stages, procedures=procedures))
    return {each.wanted.serves for each in found.purchases if each.may_buy}


LOGS = {
    "nothing": ((), False),
    "no spark proved": ((SAFE, FUEL, RUN), False),
    "not safe": ((SPARK, FUEL, RUN), False),
    "tank not shown to hold": ((SAFE, SPARK, RUN), False),
    "it has not run": ((SAFE, SPARK, FUEL), False),
    "all shown": ((SAFE, SPARK, FUEL, RUN), True),
    "on a borrowed tank": (
        (SAFE, SPARK, FUEL, "{date: 2026-02-03, fits: auxiliary-tank}", RUN), False,
    ),
    "on a borrowed tank that is off again": (
        (SAFE, SPARK, FUEL, "{date: 2026-02-03, fits: auxiliary-tank}", RUN,
         "{date: 2026-02-05, takes-off: auxiliary-tank}"), False,
    ),
    "on a borrowed ignition": (
        (SAFE, SPARK, FUEL, "{date: 2026-02-03, fits: borrowed-part}", RUN), False,
    ),
    "a leak since": (
        (SAFE, SPARK, FUEL, RUN, "{date: 2026-02-09, procedure: leaks-fuel, cause: tap}"), False,
    ),
    "a bypass since": ((SAFE, SPARK, FUEL, RUN, "{date: 2026-02-09, fits: bypass}"), False),
    "bought all the same": (
        (SAFE, "{date: 2026-02-09, parts: [{title: Chain, price: 30}]}"), False,
    ),
}  # fmt: skip


@pytest.mark.parametrize(("log", "is_allowed"), LOGS.values(), ids=LOGS)
def test_drive_parts_wait_for_an_engine_that_runs_on_a_tank_that_holds(log, is_allowed) -> None:
    """All three stages or none, with the shipped list of stages."""
    assert may_buy(*log) == (set(DRIVE) if is_allowed else set())


ENTRIES = {
    SAFE: "+safe", SPARK: "+spark", FUEL: "+fuel", RUN: "+run",
    "{date: 2026-02-05, shows: [runs, fuel-proved]}": "+run +fuel",
    "{date: 2026-02-05, shows: drives}": "",
    "{date: 2026-02-05, unproves: runs}": "-run",
    "{date: 2026-02-05, procedure: leaks-fuel, cause: hose}": "-fuel",
    "{date: 2026-02-05, procedure: no-spark, cause: coil}": "-spark",
    "{date: 2026-02-05, fits: bypass}": "+bypass",
    "{date: 2026-02-05, takes-off: bypass}": "-bypass",
}  # fmt: skip


def is_shown(log: list[str]) -> bool:
    """Say whether a log shows all four, by keeping a plain list of what was said last."""
    holds: set[str] = set()
    for entry in log:
        for word in ENTRIES[entry].split():
            if word[0] == "-":
                holds.discard(word[1:])
            elif word[1:] not in ("spark", "run") or "bypass" not in holds:
                holds.add(word[1:])
    return {"safe", "spark", "fuel", "run"} <= holds and "bypass" not in holds


@settings(max_examples=100, deadline=None, print_blob=True)
@given(st.lists(st.sampled_from(list(ENTRIES)), max_size=9))
def test_no_log_whatever_lets_drive_parts_be_bought_early(log: list[str]) -> None:
    """Any order of entries: drive parts may be bought when all is shown, and only then."""
    assert may_buy(*log) == (set(DRIVE) if is_shown(log) else set())
