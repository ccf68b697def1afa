"""The flowcharts in a real browser: what was measured is what is drawn."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from pullcord.drawing import ChartSettings, chart_font_css, draw_chart
from pullcord.drawing.font import read_face
from pullcord.project import load_project
from pullcord.safety.notes import safety_notes
from pullcord.source.places import shipped_procedures, site_templates
from tests.drawing.examples import ORCHARD_BOXES, orchard, small, ugly

SHIPPED = sorted(path.stem for path in shipped_procedures().glob("*.yaml"))
MADE_UP = {"orchard": orchard, "small": small, "ugly": ugly}
CHARTS = [*SHIPPED, *MADE_UP]

TOP = "<!doctype html><html lang=en><meta charset=utf-8><title>Chart</title>"

MEASURE = """
() => {
  const corners = (b) => [0, 0.25, 0.5, 0.75, 1].flatMap((i) => [0, 0.5, 1].map((j) =>
    new DOMPoint(b.x + b.width * i, b.y + b.height * j)));
  const nodes = [...document.querySelectorAll(".pc-node")].map((node) => ({
    name: node.getAttribute("aria-label"),
    shape: node.querySelector(".pc-shape"),
    texts: [...node.querySelectorAll("text")],
    marks: [...node.querySelectorAll(".pc-triangle")],
  }));
  const outside = nodes.flatMap((node) => [...node.texts, ...node.marks]
    .filter((part) => !corners(part.getBBox()).every((at) => node.shape.isPointInFill(at)))
    .map((part) => [node.name, part.textContent]));
  const answers = [...document.querySelectorAll(".pc-answer")];
  const covered = answers.flatMap((answer) => nodes
    .filter((node) => corners(answer.getBBox()).some((at) => node.shape.isPointInFill(at)))
    .map((node) => [answer.textContent, node.name]));
  return {
    nodes: nodes.length,
    texts: nodes.reduce((sum, node) => sum + node.texts.length, 0),
    answers: answers.length,
    outside,
    covered,
  };
}
"""
UNPINNED = """
() => [...document.querySelectorAll(".pc-chart text")].map((text) => {
  const pinned = Number(text.getAttribute("textLength"));
  text.removeAttribute("textLength");
  return [text.textContent, pinned, text.getComputedTextLength()];
})
"""


PINNED = """
() => [...document.querySelectorAll(".pc-chart text")].map((text) =>
  [text.textContent, Number(text.getAttribute("textLength")), text.getBBox().width])
"""


ROOM = """
() => {
  const svg = document.querySelector(".pc-chart");
  return [svg.getScreenCTM().a, Number(svg.getAttribute("width")),
    svg.parentElement.clientWidth, document.documentElement.scrollWidth,
    svg.parentElement.scrollWidth];
}
"""


@dataclass(frozen=True)
class Line:
    """A line of text and its width in px."""

    text: str
    pinned: float
    drawn: float
    """When nothing holds it to the pinned width."""


@dataclass(frozen=True)
class Seen:
    """What a browser says of a chart."""

    is_font_there: bool
    room: tuple[float, ...]
    """Scale, the chart's own width, its frame's, the page's, and what the frame can be slid to."""
    parts: dict[str, Any]
    lines: list[Line]


@cache
def shipped_charts() -> dict[str, str]:
    """Return the chart of every shipped procedure, by name, marked with its real cautions."""
    library = load_project([shipped_procedures()]).library
    notes = safety_notes(library)
    return {
        name: draw_chart(procedure, notes[name].boxes, ChartSettings()).svg
        for name, procedure in library.procedures.items()
    }


@cache
def chart(name: str) -> str:
    """Return a shipped or a made-up chart as SVG."""
    if name in MADE_UP:
        return draw_chart(MADE_UP[name](), ORCHARD_BOXES, ChartSettings()).svg
    return shipped_charts()[name]


@pytest.fixture(scope="module")
def styles() -> str:
    """Give the stylesheets a chart comes with."""
    css = (site_templates() / "assets" / "chart.css").read_text(encoding="utf-8")
    return f"<style>{chart_font_css()}</style><style>{css}</style>"


@pytest.fixture
def show(portrait: Page, tmp_path: Path, styles: str) -> Callable[..., Page]:
    """Give a way to open a page with charts, from a file and without a network."""

    def open_page(*names: str, head: str = styles, scheme: str = "default") -> Page:
        charts = "".join(f'<div class="pc-chart-scroll">{chart(name)}</div>' for name in names)
        path = tmp_path / "chart.html"
        body = f'<body data-md-color-scheme="{scheme}" style="margin: 16px">{charts}'
        path.write_text(TOP + head + body, encoding="utf-8")
        portrait.goto(path.as_uri())
        portrait.evaluate("document.fonts.ready.then(() => true)")
        return portrait

    return open_page


@pytest.fixture(scope="module")
def easel(browser: Browser) -> Iterator[Page]:
    """Give the page of a 768 px tablet, on which one chart after the other is shown."""
    page = browser.new_page(viewport={"width": 768, "height": 1024}, offline=True)
    yield page
    page.close()


@pytest.fixture(scope="module", params=CHARTS)
def seen(request: pytest.FixtureRequest, easel: Page, styles: str) -> Seen:
    """Give what a 768 px tablet shows of a chart; every chart is opened once for all its tests."""
    body = f'<div class="pc-chart-scroll">{chart(request.param)}</div>'
    easel.set_content(f"{TOP}{styles}<body style='margin: 16px'>{body}")
    easel.evaluate("document.fonts.ready.then(() => true)")
    return Seen(
        is_font_there=easel.evaluate("document.fonts.check('700 16px \"Pullcord Sans\"')"),
        room=easel.evaluate(ROOM),
        parts=easel.evaluate(MEASURE),
        lines=[Line(*line) for line in easel.evaluate(UNPINNED)],
    )


def test_every_text_is_inside_its_symbol(seen: Seen) -> None:
    """The browser's own boxes of all lines and hazard symbols are within the outlines, and no
    answer lies on a symbol."""
    assert seen.parts["nodes"] > 3
    assert seen.parts["texts"] >= seen.parts["nodes"]
    assert seen.parts["answers"] > 3
    assert seen.parts["outside"] == []
    assert seen.parts["covered"] == []


def test_what_was_measured_is_what_is_drawn(seen: Seen) -> None:
    """Let go of their pinned width, lines of our own typeface are as wide as measured."""
    assert seen.is_font_there
    lines = [line for line in seen.lines if is_plain(line.text)]
    assert len(lines) > 5
    assert [
        line for line in lines if abs(line.pinned - line.drawn) > 0.02 + 0.002 * line.drawn
    ] == []


def test_type_stays_large_and_the_page_stays_put(seen: Seen) -> None:
    """Type is 14.4 px at the least, 16 px where there is room; only the chart's own frame can be
    slid sideways."""
    scale, natural, room, page_width, _ = seen.room
    assert page_width == 768
    assert scale == pytest.approx(min(1, max(0.9, room / natural)), abs=0.001)


def test_shipped_charts_need_no_sliding(request: pytest.FixtureRequest, seen: Seen) -> None:
    """On a tablet held upright a shipped chart is seen in its whole width."""
    _, _, room, _, inner = seen.room
    assert inner == room or request.node.callspec.params["seen"] not in SHIPPED


@pytest.mark.parametrize("name", ["orchard", "ugly"])
def test_lines_keep_their_width_without_our_typeface(name: str, show: Callable[..., Page]) -> None:
    """A browser that refuses the font squeezes another one into the measured widths."""
    css = (site_templates() / "assets" / "chart.css").read_text(encoding="utf-8")
    drawn = show(name, head=f"<style>{css}</style>").evaluate(PINNED)
    assert len(drawn) > 30
    # The browser's boxes go out to whole glyphs and whole px.
    assert [line for line in drawn if abs(line[1] - line[2]) > 2] == []


def is_plain(text: str) -> bool:
    """Return whether every character of a line is in our typeface."""
    return all(ord(character) in read_face("regular").advances_em for character in text)


def test_symbols_lead_to_their_steps(show: Callable[..., Page]) -> None:
    """A tap on a symbol changes the address to the step's place."""
    page = show("orchard")
    page.get_by_role("link", name="Check: DANGER. Smell for petrol").click()
    assert page.url.endswith("#step-smell")


def test_symbols_are_large_enough(show: Callable[..., Page]) -> None:
    """Every link is at least 48 px in both directions."""
    sizes = show("small").evaluate(
        "() => [...document.querySelectorAll('.pc-chart a')].map((a) => {"
        " const b = a.getBoundingClientRect(); return Math.min(b.width, b.height); })"
    )
    assert min(sizes) >= 48


def test_charts_share_a_page(show: Callable[..., Page]) -> None:
    """No identifier occurs twice when several charts are on one page."""
    ids = show("orchard", "small", "ugly").evaluate(
        "() => [...document.querySelectorAll('[id]')].map((e) => e.id)"
    )
    assert len(ids) > 9
    assert len(set(ids)) == len(ids)


INK = """
() => {
  const seen = (css, property) =>
    getComputedStyle(document.querySelector(css)).getPropertyValue(property);
  return [seen(".pc-title", "fill"), seen(".pc-decision .pc-shape", "fill"),
    seen(".pc-decision .pc-shape", "stroke")];
}
"""


def test_scheme_and_paper_change_the_colours(show: Callable[..., Page]) -> None:
    """Dark is light on dark, and paper is black on white from both schemes."""
    light = show("orchard").evaluate(INK)
    page = show("orchard", scheme="slate")
    dark = page.evaluate(INK)
    assert light[0] == "rgb(20, 24, 28)"
    assert dark[0] == "rgb(244, 246, 248)"
    page.emulate_media(media="print")
    assert page.evaluate(INK) == ["rgb(0, 0, 0)", "rgb(255, 255, 255)", "rgb(0, 0, 0)"]


def test_hostile_text_does_nothing(show: Callable[..., Page]) -> None:
    """No script ran, no element slipped in, and no link leads anywhere but to a step or cause."""
    page = show("ugly")
    assert page.evaluate("document.querySelectorAll('script, foreignObject, image').length") == 0
    links = page.evaluate("[...document.querySelectorAll('a')].map((a) => a.getAttribute('href'))")
    assert all(link.startswith(("#step-", "#cause-")) for link in links)
