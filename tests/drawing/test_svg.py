"""The SVG element: ours in every part, inert whatever the text."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from xml.etree import ElementTree

import pytest

from pullcord.drawing.chart import OtherProcedure, chart_of, one_line
from pullcord.drawing.fit import geometry_of
from pullcord.drawing.style import SCREEN_STYLES
from pullcord.drawing.svg import TYPE_PX, render_chart
from pullcord.errors import PullcordError
from pullcord.model.procedure import Procedure
from pullcord.source.places import site_templates
from tests.drawing.examples import ORCHARD_BOXES, orchard, small, ugly

SVG = "{http://www.w3.org/2000/svg}"
OTHERS = {"no-spark": OtherProcedure("No spark & “why”", "no-spark.html")}
KNOWN_TAGS = {"svg", "title", "desc", "g", "a", "path", "text"}
KNOWN_ATTRIBUTES = {
    "aria-describedby", "aria-hidden", "aria-label", "aria-labelledby", "class", "d", "font-size",
    "height", "href", "id", "lengthAdjust", "role", "style", "text-anchor", "textLength",
    "viewBox", "width", "x", "y",
}  # fmt: skip


def svg_of(procedure: Procedure) -> str:
    """Return the procedure's chart in a column."""
    chart = chart_of(procedure, ORCHARD_BOXES, OTHERS)
    return render_chart(geometry_of(chart, SCREEN_STYLES[1], "built-in"))


def parsed(procedure: Procedure) -> ElementTree.Element:
    """Return the chart's elements; fails when it is not well-formed XML."""
    return ElementTree.fromstring(svg_of(procedure))  # noqa: S314 (our own output)


@pytest.mark.parametrize("make", [orchard, small, ugly])
def test_consists_of_our_own_elements_only(make: Callable[[], Procedure]) -> None:
    """No text becomes an element, an attribute or a script."""
    elements = list(parsed(make()).iter())
    assert {element.tag.removeprefix(SVG) for element in elements} <= KNOWN_TAGS
    assert {name for element in elements for name in element.attrib} <= KNOWN_ATTRIBUTES


@pytest.mark.parametrize("make", [orchard, small, ugly])
def test_links_stay_on_the_page_or_in_the_library(make: Callable[[], Procedure]) -> None:
    """Every link is a fragment of this page or the address another page was given with."""
    links = [element.attrib["href"] for element in parsed(make()).iter(f"{SVG}a")]
    assert links
    assert all(
        re.fullmatch(r"#(step|cause)-[a-z0-9-]+", link) or link == "no-spark.html" for link in links
    )


def test_every_symbol_with_a_place_on_the_page_is_a_link() -> None:
    """Start, steps, causes and hand-overs lead somewhere; all have a name."""
    links = {link.attrib["aria-label"] for link in parsed(small()).iter(f"{SVG}a")}
    assert links == {
        "Start: Will not pump",
        "Step: Fill the pump.",
        "Check: Run it. What comes out?",
        "Cause: Foot valve stuck.",
        "Cause: Hose sucks air.",
        "Go on with another procedure: Go on with. No spark & “why”.",
    }


@pytest.mark.parametrize("make", [orchard, small, ugly])
def test_text_is_written_out(make: Callable[[], Procedure]) -> None:
    """Every title can be read in the chart, character by character, whatever is in it."""
    procedure = make()
    written = "".join(text.text or "" for text in parsed(procedure).iter(f"{SVG}text"))
    for part in (*procedure.steps.values(), *procedure.causes.values()):
        assert one_line(part.title).replace(" ", "") in written.replace(" ", "")


def test_says_what_it_is() -> None:
    """The first two children name and describe the chart, and the element refers to them."""
    root = parsed(orchard())
    title, desc = root[0], root[1]
    assert (title.tag, desc.tag) == (f"{SVG}title", f"{SVG}desc")
    assert title.text == "Flowchart: Turns over, no spark"
    assert desc.text is not None
    assert "18 checks lead to 19 causes" in desc.text
    assert root.attrib["aria-labelledby"] == title.attrib["id"]
    assert root.attrib["aria-describedby"] == desc.attrib["id"]
    assert root.attrib["role"] == "group"
    assert [child.tag for child in root.iter(f"{SVG}title")] == [title.tag]


def test_identifiers_carry_the_procedures_name() -> None:
    """Two charts on one page never share an identifier."""

    def ids(make: Callable[[], Procedure]) -> set[str]:
        return {e.attrib["id"] for e in parsed(make()).iter() if "id" in e.attrib}

    assert len(ids(orchard)) > 3
    assert ids(orchard).isdisjoint(ids(small))
    assert all("no-spark-trial" in id_ for id_ in ids(orchard))


def test_natural_size_is_the_geometrys() -> None:
    """One px of the geometry is one px of the page: 16 px type is 16 px type."""
    root = parsed(orchard())
    width, height = root.attrib["width"], root.attrib["height"]
    assert root.attrib["viewBox"] == f"0 0 {width} {height}"
    assert {text.attrib.get("font-size") for text in root.iter(f"{SVG}text")} == {None}
    css = (site_templates() / "assets" / "chart.css").read_text(encoding="utf-8")
    assert re.search(rf"^svg\.pc-chart {{[^}}]*font-size: {TYPE_PX}px;", css, re.MULTILINE)


def test_brings_no_colour_and_no_background() -> None:
    """Colours are the stylesheet's; nothing lies under the chart."""
    svg = svg_of(orchard())
    assert "fill" not in svg
    assert "stroke" not in svg
    assert re.findall(r'style="([a-z-]+):', svg) == ["max-width"]
    assert "<rect" not in svg


def test_a_hand_over_has_doubled_sides() -> None:
    """A predefined process is told from a process by the lines inside its sides (ISO 5807)."""
    with_bars = [
        e.attrib["class"]
        for e in parsed(small()).iter()
        if any(child.attrib.get("class") == "pc-bars" for child in e)
    ]
    assert with_bars == ["pc-node pc-hand-over"]


def test_hazards_are_marked_by_word_class_and_symbol() -> None:
    """A step's gravest word stands in it, and sets its class; the symbol is drawn with it."""
    (smell,) = [
        link for link in parsed(orchard()).iter(f"{SVG}a") if link.attrib["href"] == "#step-smell"
    ]
    assert smell.attrib["class"] == "pc-node pc-decision pc-danger"
    assert [child.attrib["class"] for child in smell][:4] == [
        "pc-shape",
        "pc-triangle",
        "pc-bar",
        "pc-signal",
    ]
    assert smell[3].text == "DANGER"


def test_a_projects_own_template_goes_first(tmp_path: Path) -> None:
    """A shop may lay its charts out differently."""
    (tmp_path / "drawing").mkdir()
    path = tmp_path / "drawing" / "chart.svg.j2"
    path.write_text("<svg>{{ chart.title }}</svg>", encoding="utf-8")
    geometry = geometry_of(chart_of(small(), {}), SCREEN_STYLES[0], "built-in")
    assert render_chart(geometry, (tmp_path,)) == "<svg>Will not pump</svg>"


def test_a_projects_faulty_template_is_told(tmp_path: Path) -> None:
    """A mistake in it is a message, not a traceback."""
    (tmp_path / "drawing").mkdir()
    (tmp_path / "drawing" / "chart.svg.j2").write_text("{{ chart.nothing }}", encoding="utf-8")
    geometry = geometry_of(chart_of(small(), {}), SCREEN_STYLES[0], "built-in")
    with pytest.raises(PullcordError, match=r"drawing/chart\.svg\.j2"):
        render_chart(geometry, (tmp_path,))
