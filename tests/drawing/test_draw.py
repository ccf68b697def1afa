"""Drawing a procedure from end to end."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from pullcord.drawing import ChartSettings, chart_font_css, draw_chart
from pullcord.errors import LayoutError
from tests.drawing.examples import ORCHARD_BOXES, orchard, small

ROOT = Path(__file__).parents[2]
DIGEST = """
from hashlib import sha256
from pullcord.drawing import ChartSettings, draw_chart
from tests.drawing.examples import ORCHARD_BOXES, orchard, ugly
for make in (orchard, ugly):
    svg = draw_chart(make(), ORCHARD_BOXES, ChartSettings()).svg
    print(sha256(svg.encode()).hexdigest())
"""


def digests(seed: str) -> list[str]:
    """Return what a fresh Python with a hash seed draws."""
    environment = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)}
    done = subprocess.run(
        [sys.executable, "-c", DIGEST], env=environment, capture_output=True, check=True
    )
    return done.stdout.decode().split()


def test_same_input_same_bytes() -> None:
    """Two Pythons that order their sets differently draw the same charts."""
    first, second = digests("1"), digests("4242")
    assert first == second
    assert len(set(first)) == 2


def test_kept_layouts_give_the_same_chart(tmp_path: Path) -> None:
    """With and without the cache, first time and second, the chart is the same."""
    kept = ChartSettings(cache_folder=tmp_path)
    plain = draw_chart(orchard(), ORCHARD_BOXES, ChartSettings())
    assert draw_chart(orchard(), ORCHARD_BOXES, kept) == plain
    assert len(list(tmp_path.iterdir())) == 1
    assert draw_chart(orchard(), ORCHARD_BOXES, kept) == plain
    assert len(list(tmp_path.iterdir())) == 1


def test_a_changed_text_is_a_new_chart(tmp_path: Path) -> None:
    """Nothing old is shown for a procedure that was edited."""
    kept = ChartSettings(cache_folder=tmp_path)
    draw_chart(small(), {}, kept)
    assert "Will not suck" in draw_chart(small(title="Will not suck"), {}, kept).svg
    assert len(list(tmp_path.iterdir())) == 2


def test_a_spoilt_entry_does_no_harm(tmp_path: Path) -> None:
    """Even an entry whose digest fits but whose content does not is only slower once."""
    kept = ChartSettings(cache_folder=tmp_path)
    plain = draw_chart(small(), {}, kept)
    (entry,) = tmp_path.iterdir()
    entry.write_bytes(entry.read_bytes()[:-20])
    assert draw_chart(small(), {}, kept) == plain


def test_engine_failure_comes_through(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a layout there is a message, and nothing half drawn."""
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(LayoutError, match="Install Graphviz"):
        draw_chart(small(), {}, ChartSettings(engine="dot"))
    with pytest.raises(LayoutError, match="Install Graphviz"):
        draw_chart(small(), {}, ChartSettings(engine="dot", cache_folder=tmp_path / "cache"))


def test_font_css_is_whole_and_kept(tmp_path: Path) -> None:
    """The stylesheet is small enough to embed and is made once."""
    css = chart_font_css(tmp_path)
    assert css == chart_font_css(tmp_path)
    assert len(list(tmp_path.iterdir())) == 2
    assert 20_000 < len(css) < 80_000
