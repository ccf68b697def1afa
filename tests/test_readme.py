"""What the README shows is what the project does."""

from __future__ import annotations

import os
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from pullcord.cli import main
from pullcord.drawing import ChartSettings, draw_chart
from pullcord.project import load_project
from pullcord.safety.boxes import boxes_for
from pullcord.source.places import site_templates

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
PICTURE = ROOT / "guide" / "images" / "chart.svg"
FENCE = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
(PROCEDURE,) = (text for kind, text in FENCE.findall(README) if text.startswith("procedure: "))
(OUTPUT,) = (text for kind, text in FENCE.findall(README) if kind == "text")


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with the README's procedure in it, to work in."""
    monkeypatch.chdir(tmp_path)
    path = tmp_path / "procedures" / "no-prime.yaml"
    path.parent.mkdir()
    path.write_text(PROCEDURE, encoding="utf-8")
    return path


def test_its_procedure_is_without_a_finding(shop: Path) -> None:
    """Whoever copies it starts clean."""
    result = CliRunner().invoke(main, ["check", "--strict", "procedures"])
    assert (result.exit_code, result.output) == (0, "1 checked, nothing found\n")


def test_its_finding_is_what_the_check_prints(shop: Path) -> None:
    """The slip it speaks of gives the lines it shows, at the very place."""
    slip = PROCEDURE.replace("not full: cause dry-casing", "not full: cause dry-case")
    shop.write_text(slip, encoding="utf-8")
    result = CliRunner().invoke(main, ["check", "procedures"])
    assert result.exit_code == 1
    assert OUTPUT.rstrip() in result.output


def test_its_picture_is_drawn_from_its_procedure(shop: Path) -> None:
    """The golden picture is the chart of the YAML beside it; `make golden` draws it anew."""
    procedure = load_project([shop.parent]).library.procedures["no-prime"]
    svg = draw_chart(procedure, boxes_for(procedure), ChartSettings()).svg
    css = (site_templates() / "assets" / "chart.css").read_text(encoding="utf-8")
    drawn = re.sub(r"(<svg[^>]*>)", lambda head: f"{head[0]}\n<style>\n{css}</style>", svg, count=1)
    if os.environ.get("PULLCORD_GOLDEN") == "write":
        PICTURE.parent.mkdir(exist_ok=True)
        PICTURE.write_text(drawn, encoding="utf-8")
    assert PICTURE.read_text(encoding="utf-8") == drawn
