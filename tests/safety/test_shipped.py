"""The shipped procedures are safe, and it is their own words that make them so."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from pullcord.model.procedure import Library
from pullcord.model.shared import fill_in, gather_pieces
from tests.rules.safety.test_safety_rules import RULES

PROCEDURES = Path(__file__).parents[2] / "procedures"
FILES = sorted(PROCEDURES.glob("*.yaml"))


def read() -> dict[str, Any]:
    """Return every shipped procedure as plain data, every scalar as text, whole."""
    pieces = gather_pieces(map(read_file, sorted(PROCEDURES.glob("shared/*.yaml"))))
    each = (fill_in(read_file(path), pieces).data for path in FILES)
    return {data["procedure"]: data for data in each}


def read_file(path: Path) -> dict[str, Any]:
    """Return a file as plain data."""
    data: dict[str, Any] = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)  # noqa: S506
    return data


def finds(name: str, data: dict[str, Any]) -> bool:
    """Return whether a safety rule finds anything in a library of plain data."""
    library = Library.model_validate({"procedures": data})
    found = (RULES[name].check(procedure, library) for procedure in library.procedures.values())
    return any(next(iter(each), None) for each in found)


def test_the_shipped_library_has_no_safety_finding() -> None:
    """Every way through every procedure, and through what it hands over to."""
    assert len(FILES) >= 3
    data = read()
    assert [name for name in RULES if finds(name, data)] == []


WITHOUT = {
    "closes": "not-put-right",
    "clears": "not-put-right",
    "takes-off": "not-put-right",
    "cools": "petrol-near-hot-engine",
    "arranges": "runs-without-air",
    "disables": "never-begun",
    "opens": "never-begun",
    "fits": "never-begun",
}


@pytest.mark.parametrize(("key", "rule"), WITHOUT.items(), ids=WITHOUT)
def test_a_library_without_one_kind_of_care_is_refused(key, rule) -> None:
    """Take a key out everywhere, and the rule that watches it speaks up."""
    data = read()
    for procedure in data.values():
        for part in ("steps", "causes"):
            for node in procedure[part].values():
                node.pop(key, None)
    assert finds(rule, data)
