"""Lists of stages with slips in them, and the shipped one without."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.analysis.job.making import IDLE, LEAK, SPARK
from tests.rules.files import check_files

ROOT = Path(__file__).parents[3]
SHED = {"spark.yaml": SPARK, "leak.yaml": LEAK, "idle.yaml": IDLE}
HEAD = "stages: mine\nstage:\n"

CASES = {
    "names": (
        """\
  one: {title: One, means: One., after: [two, tow], looked-for-in: [spark, sparkle]}
  two: {title: Two, means: Two., proved-by: [{procedure: leek}, {procedure: leak, step: loke}]}
  three:
    title: Three
    means: Three.
    proved-by:
      - {procedure: leak, step: look, answers: [nothing, noting]}
      - {value: any-value}
""",
        [
            "3:47 unknown-earlier-stage",
            "3:76 unknown-evidence",
            "4:58 unknown-evidence",
            "4:89 unknown-evidence",
            "9:58 unknown-evidence",
        ],
    ),
    "evidence that says too little or too much": (
        """\
  one:
    title: One
    means: One.
    proved-by:
      - {}
      - {step: look, answers: nothing}
      - {procedure: leak, value: plug-gap}
      - {procedure: leak, answers: nothing}
      - {procedure: leak, step: look}
      - {procedure: spark, step: fit-lead}
      - {job: taken-in}
""",
        [
            "7:9 unclear-evidence",
            "8:9 unclear-evidence",
            "9:9 unclear-evidence",
            "10:9 unclear-evidence",
            "11:9 unclear-evidence",
        ],
    ),
    "circles": (
        """\
  one: {title: One, means: One., after: one}
  two: {title: Two, means: Two., after: three}
  three: {title: Three, means: Three., after: two}
  four: {title: Four, means: Four., after: three}
""",
        ["3:41 stages-in-a-circle", "4:41 stages-in-a-circle"],
    ),
    "drive by way of others": (
        """\
  fuel-proved: {title: Fuel, means: Fuel.}
  runs: {title: Runs, means: Runs., after: fuel-proved}
  charges: {title: Charges, means: Charges., after: runs}
  drives: {title: Drives, means: Drives., after: charges}
  stops: {title: Stops, means: Stops., after: fuel-proved}
  controls-sound: {title: Controls, means: Controls.}
""",
        [
            "7:3 drive-before-running",
            "8:3 drive-before-running",
            "8:3 drive-before-running",
        ],
    ),
}


@pytest.mark.parametrize(("body", "expected"), CASES.values(), ids=CASES)
def test_every_slip_is_found_where_it_stands(body, expected) -> None:
    """One slip, one finding, and nothing is found in what is right."""
    files = {**SHED, "mine.yaml": HEAD + body}
    found = check_files({name: text.encode() for name, text in files.items()})
    own = [each for each in found if each.file == "mine.yaml"]
    assert [f"{each.line}:{each.column} {each.rule}" for each in own] == expected
    assert all(each.mend for each in own)


def test_the_shipped_list_has_nothing_wrong() -> None:
    """Every procedure, step and answer it names is in the shipped library."""
    paths = sorted((ROOT / "procedures").rglob("*.yaml"))
    files = {path.name: path.read_bytes() for path in paths}
    assert "small-machine-stages.yaml" in files
    assert [each for each in check_files(files) if each.file == "small-machine-stages.yaml"] == []
