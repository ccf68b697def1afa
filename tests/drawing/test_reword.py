"""One layout that serves the pages of several machines."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pullcord.drawing import ChartSettings, ChartWords, DrawnChart, draw_chart, draw_charts
from pullcord.drawing.chart import OtherProcedure, chart_of
from pullcord.drawing.fit import fit_chart, geometry_of
from pullcord.drawing.geometry import PlacedNode
from pullcord.drawing.measure import text_width_px
from pullcord.drawing.reword import reword, roomiest
from pullcord.drawing.style import SCREEN_STYLES, Style
from tests.drawing.examples import ORCHARD_BOXES, orchard, small

READ = "step:run"
SHORT, LONG = "< 1 Ω", "0.05–0.25 mm (general)"


def drawn(*versions: ChartWords) -> list[DrawnChart]:
    """Draw the small example once a version."""
    return list(draw_charts(small(), {}, ChartSettings(), versions))


def node(chart: DrawnChart, id_: str) -> PlacedNode:
    """Return a node of a drawn chart."""
    return next(each for each in chart.geometry.nodes if each.id == id_)


def limits(chart: DrawnChart) -> list[str]:
    """Return the limits on the step that reads."""
    return [line.text for line in node(chart, READ).shape.lines if line.role == "limits"]


def test_every_page_has_its_own_limits_in_the_same_place() -> None:
    """Symbols and arrows stay where they are; the words change, and the spoken name with them."""
    one, other = drawn(ChartWords(limits={READ: SHORT}), ChartWords(limits={READ: LONG}))
    assert (limits(one), limits(other)) == ([SHORT], [LONG])
    assert node(one, READ).name.endswith(f"What comes out? {SHORT}.")
    bare = [
        replace(chart.geometry, nodes=tuple(replace(n, name="", shape=None) for n in nodes))
        for chart, nodes in ((each, each.geometry.nodes) for each in (one, other))
    ]
    assert bare[0] == bare[1]
    places = [[(n.shape.x, n.shape.width) for n in each.geometry.nodes] for each in (one, other)]
    assert places[0] == places[1]


@pytest.mark.parametrize("order", [(SHORT, LONG), (LONG, SHORT)], ids=["short-first", "long-first"])
def test_there_is_room_for_the_longest(order: tuple[str, str]) -> None:
    """Whichever page comes first, the longest limits stand inside the symbol on one line."""
    for chart in drawn(*(ChartWords(limits={READ: text}) for text in order)):
        shape = node(chart, READ).shape
        for line in shape.lines:
            assert line.width == pytest.approx(
                text_width_px(line.text, line.size, line.weight), abs=0.01
            )
            assert abs(line.x - shape.x) + line.width / 2 <= shape.width / 2


def test_a_page_without_limits_has_no_empty_line() -> None:
    """Where nobody knows what it should read, nothing is drawn."""
    one, other = drawn(ChartWords(), ChartWords(limits={READ: LONG}))
    assert (limits(one), limits(other)) == ([], [LONG])
    assert LONG not in one.svg


def test_every_page_has_its_own_links() -> None:
    """A hand-over leads to the page of the same machine, where there is one."""
    links = ("no-spark.html", "../../procedures/no-spark.html")
    versions = (ChartWords({"no-spark": OtherProcedure("No spark", href)}) for href in links)
    found = [node(chart, "procedure:no-spark").href for chart in drawn(*versions)]
    assert found == list(links)


def test_one_page_alone_is_the_plain_chart() -> None:
    """Nothing is lost or moved where there is only one version."""
    chart = chart_of(orchard(), ORCHARD_BOXES)
    plain = fit_chart(chart, SCREEN_STYLES, ChartSettings().widest_px, "built-in")
    assert draw_chart(orchard(), ORCHARD_BOXES, ChartSettings()).geometry == plain


def test_an_end_that_is_drawn_twice_is_reworded_twice() -> None:
    """A copy of a hand-over leads where the hand-over leads."""
    far = {"title": "t", "do": "d", "ask": "q"}
    steps = {
        "prime": {**far, "answers": {"a": "procedure no-spark", "b": "step middle"}},
        "middle": {**far, "answers": {"a": "cause valve", "b": "step run"}},
        "run": {**far, "answers": {"a": "procedure no-spark", "b": "cause hose"}},
    }
    charts = [
        chart_of(small(steps=steps), {}, {"no-spark": OtherProcedure("No spark", href)})
        for href in ("one.html", "other.html")
    ]
    column = Style(arrangement="column", reach=0)
    geometry = reword(geometry_of(roomiest(charts), column, "built-in"), charts[1])
    links = {n.id: n.href for n in geometry.nodes if n.id.startswith("procedure:")}
    assert links == {"procedure:no-spark": "other.html", "procedure:no-spark#2": "other.html"}
