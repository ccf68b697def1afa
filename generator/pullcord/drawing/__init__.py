"""From a procedure's graph to a picture of it."""

from pullcord.drawing.chart import OtherProcedure
from pullcord.drawing.draw import ChartSettings, DrawnChart, chart_font_css, draw_chart
from pullcord.drawing.geometry import Geometry

__all__ = [
    "ChartSettings",
    "DrawnChart",
    "Geometry",
    "OtherProcedure",
    "chart_font_css",
    "draw_chart",
]
