"""`pullcord print --what job` writes the sheet of a job."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from pullcord.cli import main
from tests.shed import write_shed

LOG = "job: spring\nmachine: bike\ntaken-in: 2026-02-14\npurpose: To run.\nmost: 10\n"
SHEET = "machine: bike\ntitle: Bike\nkind: farm-bike\n"


@pytest.fixture
def shed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give a project with one job, and stand in it."""
    write_shed(tmp_path)
    for name, text in {"jobs/spring.yaml": LOG, "machines/bike.yaml": SHEET}.items():
        path = tmp_path / name
        path.parent.mkdir()
        path.write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_a_job_sheet_is_written(shed: Path) -> None:
    """A PDF, on the paper that was asked for."""
    words = ["print", "spring", "--what", "job", "--paper", "letter", "-o", "job.pdf"]
    result = CliRunner().invoke(main, words)
    assert result.exit_code == 0, result.output
    assert (shed / "job.pdf").read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("name", "said"),
    [
        pytest.param(["sprin"], "there is no job `sprin`", id="a slip of the pen"),
        pytest.param([], "name a procedure", id="no name"),
    ],
)
def test_what_cannot_be_printed_is_said(shed: Path, name: list[str], said: str) -> None:
    """Wrong usage ends with 2 and leaves no file."""
    result = CliRunner().invoke(main, ["print", *name, "--what", "job", "-o", "job.pdf"])
    assert (result.exit_code, said in result.output) == (2, True)
    assert not (shed / "job.pdf").exists()
