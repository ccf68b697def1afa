"""The shop's meter, out of the settings of a project."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from pullcord.errors import FindingsError
from pullcord.model.meter import MeterSheet
from pullcord.site.meter import read_meter

SETTINGS = """\
site_name: Test shed
plugins:
  - search
  - pullcord:
      meter:
        title: a bench meter
        leads: 0.1 ohm
        ranges:
          - {up-to: 200 ohm, step: 0.01 ohm, percent: 0.2, digits: 2}
          - {up-to: 20 V, step: 0.01 V, digits: 1}
"""


def read(folder: Path, text: str) -> MeterSheet | None:
    """Read the meter of a settings file as MkDocs hands it on: numbers are numbers."""
    path = folder / "mkdocs.yml"
    path.write_text(text, encoding="utf-8")
    return read_meter(yaml.safe_load(text)["plugins"][1]["pullcord"].get("meter"), path)


def test_a_meter_is_read(tmp_path: Path) -> None:
    """Every figure of it, whether the settings hold it as a number or as text."""
    sheet = read(tmp_path, SETTINGS)
    assert sheet is not None
    assert (sheet.title, sheet.leads) == ("a bench meter", "0.1 ohm")
    assert [(r.up_to, r.step, r.percent, r.digits) for r in sheet.ranges] == [
        ("200 ohm", "0.01 ohm", 0.2, 2),
        ("20 V", "0.01 V", 0.0, 1),
    ]


def test_no_meter_is_the_default(tmp_path: Path) -> None:
    """Nothing is made up where nothing is said; an empty one is the default too."""
    assert read_meter(None, tmp_path / "mkdocs.yml") is None
    assert read(tmp_path, "plugins: [search, {pullcord: {meter: {}}}]") == MeterSheet()


SLIPS = {
    "an unknown key": (
        "title: a bench", "titel: a bench",
        ["6:9 unknown-key there is no key called `titel` here"],
    ),
    "a unit nobody knows": (
        "leads: 0.1 ohm", "leads: 0.1 ohms2",
        ["7:16 unreadable-figure `ohms2` is no unit Pullcord knows"],
    ),
    "a step of another quantity": (
        "0.01 V, digits: 1", "0.01 ohm, digits: 1",
        ["10:13 unreadable-figure range `20 V` has a step of 0.01 ohm, a resistance"],
    ),
    "a word for a number": (
        "percent: 0.2", "percent: little", ["9:55 wrong-number `little` is not a number"],
    ),
    "nothing at all": (
        "up-to: 20 V, ", "", ["10:13 missing-key the key `up-to` is missing here"],
    ),
}  # fmt: skip


@pytest.mark.parametrize(("before", "after", "expected"), SLIPS.values(), ids=SLIPS)
def test_a_slip_is_found_at_its_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, before: str, after: str, expected: list[str]
) -> None:
    """File, line and column of the settings, in plain words, with a way to mend it."""
    monkeypatch.chdir(tmp_path)
    with pytest.raises(FindingsError) as caught:
        read(tmp_path, SETTINGS.replace(before, after))
    found = caught.value.findings
    assert [f"{one.line}:{one.column} {one.rule} {one.message}" for one in found] == expected
    assert {one.file for one in found} == {"mkdocs.yml"}
    assert all(one.mend for one in found)


HOLLOW = {
    "holds itself": "&m {leads: *m}",
    "holds itself in a list": "{ranges: &r [*r]}",
    "nested": "{ranges: " + "[" * 200 + "]" * 200 + "}",
    "many of many": "{leads: &a [x, x], ranges: &b [*a, *a], title: &c [*b, *b]}",
}


@pytest.mark.parametrize("meter", HOLLOW.values(), ids=HOLLOW)
def test_a_meter_that_has_no_end_is_a_finding(tmp_path: Path, meter: str) -> None:
    """MkDocs reads aliases, which our own files may not have."""
    with pytest.raises(FindingsError) as caught:
        read(tmp_path, f"plugins: [search, {{pullcord: {{meter: {meter}}}}}]")
    assert {one.rule for one in caught.value.findings} <= {"alias", "too-deep", "wrong-shape"}


def test_several_slips_come_out_together(tmp_path: Path) -> None:
    """Nobody mends a file one build at a time."""
    text = SETTINGS.replace("0.1 ohm", "0.1 V").replace("step: 0.01 V", "step: 30 V")
    with pytest.raises(FindingsError) as caught:
        read(tmp_path, text)
    assert len(caught.value.findings) == 2


def test_settings_that_are_inherited_still_name_the_file(tmp_path: Path) -> None:
    """What stands in another file is reported at the top of the one that was built."""
    path = tmp_path / "mkdocs.yml"
    path.write_text("INHERIT: base.yml\n", encoding="utf-8")
    with pytest.raises(FindingsError) as caught:
        read_meter({"leads": "wet"}, path)
    (finding,) = caught.value.findings
    assert (finding.line, finding.column) == (1, 1)
