"""The geometry of a chart in the roomiest style that the screen is wide enough for."""

from __future__ import annotations

from collections.abc import Sequence

from pullcord.drawing.answer import Settled, settle_answers
from pullcord.drawing.arrange import Pair
from pullcord.drawing.chart import Chart
from pullcord.drawing.ends import own_ends, unfold
from pullcord.drawing.geometry import Geometry
from pullcord.drawing.layout import Engine, lay_out
from pullcord.drawing.place import SizedChart, place, request_for, size_chart
from pullcord.drawing.style import Style

LARGE = 120
"""A chart of more symbols is slid anyway: only the last style is worth the time it takes."""
_ROUNDS = 2


def fit_chart(chart: Chart, styles: Sequence[Style], widest_px: float, engine: Engine) -> Geometry:
    """Return the first of the styles' geometries that is no wider; failing that, the narrowest.

    Raises LayoutError as `lay_out` does.
    """
    if len(chart.nodes) > LARGE:
        return geometry_of(chart, styles[-1], engine)
    tried: list[Geometry] = []
    wide: list[tuple[float, Style]] = []
    for style in styles:
        least = least_width_px(size_chart(chart, style))
        if least > widest_px:
            wide.append((least, style))
            continue
        tried.append(geometry_of(chart, style, engine))
        if tried[-1].width <= widest_px:
            return tried[-1]
    for least, style in wide:
        if all(least < geometry.width for geometry in tried):
            tried.append(geometry_of(chart, style, engine))
    return min(tried, key=lambda geometry: geometry.width)


def geometry_of(chart: Chart, style: Style, engine: Engine) -> Geometry:
    """Return the chart's geometry in one style. Raises LayoutError as `lay_out` does.

    The engine is first asked to keep no room for the answers of arrows that pass other steps,
    since there mostly is room near the question. Those that find none are asked for again; if
    that does not settle it, the engine keeps room for all.
    """
    sized = size_chart(chart, style)
    loose = sized.hints.passing
    for _ in range(_ROUNDS):
        settled = _lay_out(sized, loose, engine)
        if not settled.homeless:
            return unfold(settled.geometry, sized.lists)
        loose -= settled.homeless
    return unfold(_lay_out(sized, frozenset(), engine).geometry, sized.lists)


def least_width_px(sized: SizedChart) -> float:
    """Return a width that no layout of the chart is below: that of the widest row of ends.

    Ends that only one check leads to stand in the row below it, whatever the arrangement.
    """
    chart, style = sized.chart, sized.style
    width = {node.id: shape.width for node, shape in zip(chart.nodes, sized.shapes, strict=True)}
    rows = ([width[edge.head] for edge in edges] for edges in own_ends(chart).values())
    widest = max((sum(row) + (len(row) - 1) * style.beside_px for row in rows), default=0.0)
    return widest + 2 * style.margin_px


def _lay_out(sized: SizedChart, loose: frozenset[Pair], engine: Engine) -> Settled:
    (plan,) = lay_out([request_for(sized, loose)], engine)
    return settle_answers(place(sized, plan), loose)
