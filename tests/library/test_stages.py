"""What the shipped procedures prove, and take back, of the shipped stages."""

from __future__ import annotations

from typing import Any

import pytest

from pullcord.analysis.job.read import read_job_report
from pullcord.model.job import Job
from tests.library.table import read_library

LIBRARY = read_library()
WALKS = (
    ("make-safe", "safe-to-work-on"),
    ("no-spark", "spark-proved"),
    ("leaks-fuel", "fuel-proved"),
    ("first-run", "runs"),
    ("clutch", "drives"),
    ("brakes", "stops"),
    ("wheels-and-steering", "controls-sound"),
    ("first-ride", "first-ride"),
)
"""The procedures of a machine's whole way, and the stage each proves."""
CHARGES = {"value": "charging-voltage", "reading": "14.1 V", "shows": "charges"}


def proofs(*entries: dict[str, Any]) -> dict[str, str]:
    """Return how far each stage is after a log, one entry a day."""
    log = [{"date": f"2026-03-{day:02}", **entry} for day, entry in enumerate(entries, start=1)]
    job = Job.model_validate(
        {
            "job": "trial",
            "machine": "trial",
            "taken-in": "2026-02-28",
            "purpose": "To try the stages.",
            "most": 500,
            "log": log,
        }
    )
    return {state.name: state.proof for state in read_job_report(job, LIBRARY).stages}


def walked(*procedures: str) -> list[dict[str, Any]]:
    """Return entries that went through procedures to their ends."""
    return [{"procedure": each, "answer": "done"} for each in procedures]


WAY = walked(*(procedure for procedure, _ in WALKS))


def test_a_machine_walked_to_its_end_is_handed_over() -> None:
    """Every stage is proved by walks alone, and by what was read while it charged."""
    found = proofs(*WAY, CHARGES, *walked("hand-over-ready"))
    assert {name for name, proof in found.items() if proof != "proved"} == set()


@pytest.mark.parametrize(("procedure", "stage"), WALKS, ids=[stage for _, stage in WALKS])
def test_a_walk_left_out_leaves_its_stage_unproved(procedure: str, stage: str) -> None:
    """No other walk proves it by the way."""
    assert proofs(*(each for each in WAY if each["procedure"] != procedure))[stage] == "not yet"


FOUND_LATER = {
    "tyre bulges": ("tyres", {"cause": "tyre-done"}, "controls-sound"),
    "rim is bolted": ("tyres", {"cause": "bolted-rim"}, "controls-sound"),
    "brake fluid leaks": ("brakes", {"cause": "fluid-leaks"}, "stops"),
    "clutch worn": ("clutch", {"cause": "plates-worn"}, "drives"),
    "belt worn": ("belt-or-shaft", {"cause": "belt-worn"}, "drives"),
    "frame cracked": ("wheels-and-steering", {"cause": "frame-bent"}, "controls-sound"),
    "brakes weak on the ride": (
        "first-ride", {"step": "walking-pace", "answer": "brakes weakly or uneven"}, "stops",
    ),
    "second feed found": ("make-safe", {"cause": "second-feed"}, "safe-to-work-on"),
    "not worth it": ("take-in", {"cause": "not-worth-it"}, "taken-in"),
}  # fmt: skip


@pytest.mark.parametrize(("procedure", "found", "stage"), FOUND_LATER.values(), ids=FOUND_LATER)
def test_what_is_found_later_takes_the_proof_back(
    procedure: str, found: dict[str, str], stage: str
) -> None:
    """A fault in what was proved counts more than the proof, and so does all that rests on it."""
    before = proofs(*WAY)
    after = proofs(*WAY, {"procedure": procedure, **found})
    assert (before[stage], after[stage]) == ("proved", "taken back")
    assert after["first-ride"] == "taken back"


@pytest.mark.parametrize("procedure", ["chain", "tyres", "wont-start", "take-in", "lay-up"])
def test_no_other_walk_proves_more_than_it_shows(procedure: str) -> None:
    """A chain within its wear is no clutch that lets go; a tyre that holds is no sound steering."""
    proved = {name for name, proof in proofs(*walked(procedure)).items() if proof == "proved"}
    assert proved == {"taken-in"}
