"""What the command line says to a procedure's author."""

from __future__ import annotations

from pathlib import Path

import pytest

from pullcord.site.author import read_review
from tests.shed import write_files, write_shed

JOB = """\
job: bench-lamp
machine: lamp
taken-in: 2026-02-01
purpose: To see by.
most: 10
log:
  - {date: 2026-02-02, procedure: dark-lamp, cause: switch, did: Turned it on.}
"""


def test_the_odds_of_a_review_come_from_the_shops_own_log_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Without a job all causes are equal; with one, the review says whose log it was."""
    write_shed(tmp_path)
    monkeypatch.chdir(tmp_path)
    assert "own log" not in read_review("dark-lamp", None, [])
    sheet = "machine: lamp\ntitle: Lamp\nkind: lamp\n"
    write_files(tmp_path, {"jobs/bench-lamp.yaml": JOB, "machines/lamp.yaml": sheet})
    assert "from this shop's own log (1 job)" in read_review("dark-lamp", None, [])
