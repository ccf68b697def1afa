"""From a procedure's graph to a picture of it."""

from pullcord.drawing.chart import OtherProcedure
from pullcord.drawing.draw import (
    ChartSettings,
    ChartWords,
    DrawnChart,
    chart_font_css,
    draw_chart,
    draw_charts,
)
from pullcord.drawing.geometry import Geometry

__all__ = [
    "ChartSettings",
    "ChartWords",
    "DrawnChart",
    "Geometry",
    "OtherProcedure",
    "chart_font_css",
    "draw_chart",
    "draw_charts",
]
