"""The demo shed's sheets, alone and with the shipped procedures."""

from __future__ import annotations

from pathlib import Path

from pullcord.rules.catalogue import rules
from tests.rules.files import check_files

ROOT = Path(__file__).parents[3]
SHEETS = {path.name: path.read_bytes() for path in sorted((ROOT / "demo/machines").glob("*.yaml"))}
PROCEDURES = {path.name: path.read_bytes() for path in sorted((ROOT / "procedures").glob("*.yaml"))}


def test_four_machines_of_different_kinds_have_nothing_wrong() -> None:
    """What an owner copies from is clean."""
    assert len(SHEETS) >= 4
    assert check_files(SHEETS) == ()


def test_no_procedure_asks_a_demo_machine_for_what_it_cannot_answer() -> None:
    """Every reading holds on every machine the procedure fits, on the cheap meter."""
    of_readings = {rule.id for rule in rules() if rule.group in {"reading", "machine"}}
    found = check_files(PROCEDURES | SHEETS)
    assert [each for each in found if each.rule in of_readings] == []
