"""Pin charts as a browser draws and prints them."""

from __future__ import annotations

import io
from pathlib import Path

import pdfplumber
import pytest
import yaml
from playwright.sync_api import Page

from pullcord.drawing.font import WEIGHTS, render_font_css, subset_woff2
from pullcord.drawing.pin_chart import render_pin_chart, render_probes
from pullcord.model.machine import Machine
from pullcord.model.meter import MeterSheet
from pullcord.readings.meter import parse_meter
from pullcord.readings.pins import connector_views

ROOT = Path(__file__).parents[2]
ASSETS = ROOT / "site_templates" / "assets"
LEAST_POINTS = 7

OUTSIDE = """() => [...document.querySelectorAll('.pc-cell')].flatMap(cell => {
  const frame = cell.querySelector('.pc-frame').getBoundingClientRect();
  return [...cell.querySelectorAll('text')]
    .map(text => [text.textContent, text.getBoundingClientRect()])
    .filter(([, box]) => box.left < frame.left - 0.5 || box.right > frame.right + 0.5
      || box.top < frame.top - 0.5 || box.bottom > frame.bottom + 0.5)
    .map(([words]) => words);
})"""


def charts() -> list[str]:
    """Return every pin chart of the demo shed, whole and with a probe on every pin."""
    meter = parse_meter(MeterSheet())
    sheets = [
        Machine.model_validate(yaml.load(path.read_text("utf-8"), Loader=yaml.BaseLoader))  # noqa: S506 plain text only
        for path in sorted((ROOT / "demo" / "machines").glob("*.yaml"))
    ]
    views = [view for sheet in sheets for view in connector_views(sheet, meter)]
    whole = [render_pin_chart(view) for view in views]
    return whole + [
        render_probes(view, {pin.name: "2nd probe" for pin in view.pins}, "step-all")
        for view in views
    ]


@pytest.fixture(scope="module")
def page_html() -> str:
    """Give a page of all charts, each on a sheet of its own when printed."""
    fonts = render_font_css({weight: subset_woff2(weight) for weight in WEIGHTS})
    css = "".join((ASSETS / name).read_text("utf-8") for name in ("chart.css", "pin-chart.css"))
    sheet = "@page{size:A5 landscape;margin:10mm} body{margin:0} div{break-after:page}"
    body = "".join(f"<div>{chart}</div>" for chart in charts())
    return f"<!doctype html><meta charset='utf-8'><style>{fonts}{css}{sheet}</style>{body}"


def test_no_text_leaves_its_cell(portrait: Page, page_html: str) -> None:
    """What was measured is what the browser draws."""
    portrait.set_content(page_html)
    portrait.evaluate("document.fonts.ready")
    assert portrait.locator(".pc-cell text").count() > 50
    assert portrait.evaluate(OUTSIDE) == []


def test_charts_fit_a_tablet_held_upright(portrait: Page, page_html: str) -> None:
    """Nobody scrolls sideways to find a pin."""
    portrait.set_content(page_html)
    assert portrait.evaluate("document.documentElement.scrollWidth") <= 820


def test_each_chart_prints_on_half_a_sheet(portrait: Page, page_html: str) -> None:
    """One half sheet a chart, and no type under 7 points."""
    portrait.set_content(page_html)
    file = io.BytesIO(portrait.pdf(prefer_css_page_size=True))
    with pdfplumber.open(file) as pdf:
        sizes = [[character["size"] for character in page.chars] for page in pdf.pages]
    assert len(sizes) == len(charts())
    assert min(min(page) for page in sizes) >= LEAST_POINTS
