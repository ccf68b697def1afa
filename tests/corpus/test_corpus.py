"""Broken files, one mistake or one trap each, and what must be said about them.

A case is `NAME.yaml` and beside it `NAME.expected` with one `line:column rule` a line; none where
nothing is wrong. To add one, write the two files; there is no code to touch.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.rules.files import check_files

CASES = sorted(Path(__file__).parent.glob("*.yaml"))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
def test_a_broken_file_gets_its_findings(case: Path) -> None:
    """Each mistake is found at its line and column, and nothing else is."""
    found = check_files({case.name: case.read_bytes()})
    lines = [f"{each.line}:{each.column} {each.rule}" for each in found]
    assert lines == case.with_suffix(".expected").read_text(encoding="utf-8").splitlines()


def test_every_case_has_its_other_half() -> None:
    """No expectation is left without a file."""
    expected = {path.stem for path in Path(__file__).parent.glob("*.expected")}
    assert expected == {case.stem for case in CASES}
