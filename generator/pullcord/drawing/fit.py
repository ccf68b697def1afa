"""The geometry of a chart in the roomiest style that the screen is wide enough for."""

from __future__ import annotations

from collections.abc import Sequence

from pullcord.drawing.chart import Chart
from pullcord.drawing.geometry import Geometry
from pullcord.drawing.layout import Engine, lay_out
from pullcord.drawing.place import place, request_for, size_chart
from pullcord.drawing.style import Style


def fit_chart(chart: Chart, styles: Sequence[Style], widest_px: float, engine: Engine) -> Geometry:
    """Return the first of the styles' geometries that is no wider; failing that, the narrowest.

    Raises LayoutError as `lay_out` does.
    """
    tried: list[Geometry] = []
    for style in styles:
        tried.extend(geometries_of(chart, (style,), engine))
        if tried[-1].width <= widest_px:
            return tried[-1]
    return min(tried, key=lambda geometry: geometry.width)


def geometries_of(chart: Chart, styles: Sequence[Style], engine: Engine) -> tuple[Geometry, ...]:
    """Return the chart's geometry in every style, from one run of the layout engine.

    Raises LayoutError as `lay_out` does.
    """
    sized = [size_chart(chart, style) for style in styles]
    plans = lay_out([request_for(one) for one in sized], engine)
    return tuple(place(one, plan) for one, plan in zip(sized, plans, strict=True))
