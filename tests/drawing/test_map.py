"""The library as one drawing: what is drawn, and that it can be read."""

from __future__ import annotations

import networkx as nx
import pytest

from pullcord.drawing.draw import ChartSettings
from pullcord.drawing.map import MapBox, MapWords, draw_map, map_chart
from pullcord.safety.box import SignalWord

WORDS = MapWords("Map", "Which leads to which.")
BOXES = {
    "run": MapBox("First run", "Runs", "procedures/run.html"),
    "start": MapBox("Will not <start>", "Runs", "procedures/start.html"),
    "spark": MapBox("No spark", "Spark proved", "procedures/spark.html"),
    "leak": MapBox("Petrol leaks", "", "procedures/leak.html", SignalWord.DANGER),
}
HAND_OVERS = [("run", "start"), ("start", "spark"), ("spark", "leak"), ("run", "leak")]


def edges(*hand_overs: tuple[str, str]) -> list[tuple[str, str]]:
    """Return the arrows drawn for some hand-overs, without what every id begins with."""
    chart = map_chart(BOXES, nx.DiGraph(hand_overs), WORDS)
    return [
        (edge.tail.removeprefix("procedure:"), edge.head.removeprefix("procedure:"))
        for edge in chart.edges
    ]


@pytest.mark.parametrize(
    ("hand_overs", "drawn"),
    [
        (HAND_OVERS, HAND_OVERS[:3]),
        ([("run", "leak")], [("run", "leak")]),
        ([("run", "lost")], []),
        ([("run", "start"), ("start", "run")], [("run", "start"), ("start", "run")]),
    ],
    ids=["by-way-of-others", "straight", "to-nothing", "in-a-circle"],
)
def test_what_is_drawn(hand_overs: list[tuple[str, str]], drawn: list[tuple[str, str]]) -> None:
    """The transitive reduction, which for a graph without circles is one and no other.

    A. V. Aho, M. R. Garey, J. D. Ullman, "The transitive reduction of a directed graph", SIAM
    Journal on Computing 1 (1972) 131-137.
    """
    assert edges(*hand_overs) == drawn


def test_every_box_is_a_predefined_process_with_its_purpose() -> None:
    """ISO 5807: a rectangle with doubled sides is a process that is described elsewhere."""
    chart = map_chart(BOXES, nx.DiGraph(HAND_OVERS), WORDS)
    _, geometry = draw_map(chart, ChartSettings())
    by_href = {node.href: node for node in geometry.nodes}
    assert set(by_href) == {box.href for box in BOXES.values()}
    assert {node.shape.symbol for node in geometry.nodes} == {"predefined"}
    lines = [line.text for line in by_href["procedures/spark.html"].shape.lines]
    assert lines == ["No spark", "Spark proved"]
    assert by_href["procedures/leak.html"].shape.mark is not None


def test_arrows_lead_down() -> None:
    """So that one reads it from the top: no hand-over leads to a box above its own."""
    chart = map_chart(BOXES, nx.DiGraph(HAND_OVERS), WORDS)
    _, geometry = draw_map(chart, ChartSettings())
    height = {node.id: node.shape.y for node in geometry.nodes}
    assert geometry.edges
    assert all(height[edge.tail] < height[edge.head] for edge in geometry.edges)


def test_titles_are_text() -> None:
    """Never markup."""
    svg, _ = draw_map(map_chart(BOXES, nx.DiGraph(HAND_OVERS), WORDS), ChartSettings())
    assert "<start>" not in svg
    assert "&lt;start&gt;" in svg


def test_the_same_library_is_drawn_the_same() -> None:
    """Whatever order the hand-overs come in."""
    there, back = (
        draw_map(map_chart(BOXES, nx.DiGraph(given), WORDS), ChartSettings())
        for given in (HAND_OVERS, HAND_OVERS[::-1])
    )
    assert there == back
