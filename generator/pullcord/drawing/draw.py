"""From a procedure to its drawn flowchart: the one thing pages need."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from pydantic import TypeAdapter

from pullcord.drawing.cache import keep
from pullcord.drawing.chart import Chart, OtherProcedure, chart_of
from pullcord.drawing.fit import fit_chart
from pullcord.drawing.font import WEIGHTS, render_font_css, subset_woff2
from pullcord.drawing.geometry import Geometry
from pullcord.drawing.layout import Engine, engine_version
from pullcord.drawing.style import SCREEN_STYLES
from pullcord.drawing.svg import render_chart
from pullcord.model.procedure import Procedure
from pullcord.safety.box import Box

_CHART = TypeAdapter(Chart)
_GEOMETRY = TypeAdapter(Geometry)


@dataclass(frozen=True)
class ChartSettings:
    """How a project wants its charts."""

    engine: Engine = "built-in"
    """`built-in` comes with Pullcord; `dot` is the Graphviz of this machine."""
    widest_px: float = 712
    """The room a page leaves a chart on a tablet held upright, 768 px wide."""
    cache_folder: Path | None = None
    """Where finished layouts are kept between builds; None keeps nothing."""
    template_dirs: tuple[Path, ...] = ()
    """Folders whose templates go before our own."""


@dataclass(frozen=True)
class DrawnChart:
    """One flowchart: as an SVG element, and as plain geometry for paper."""

    svg: str
    """Escaped; to be put into a page as it is, inside an element of class `pc-chart-scroll`."""
    geometry: Geometry


def draw_chart(
    procedure: Procedure,
    boxes: Mapping[str, tuple[Box, ...]],
    settings: ChartSettings,
    others: Mapping[str, OtherProcedure] | None = None,
) -> DrawnChart:
    """Draw a procedure's flowchart; `boxes` and `others` are those of `chart_of`.

    Raises LayoutError when the layout engine is missing, hangs, dies or answers nonsense.
    """
    chart = chart_of(procedure, boxes, others)
    geometry = _geometry(chart, settings)
    return DrawnChart(render_chart(geometry, settings.template_dirs), geometry)


def chart_font_css(cache_folder: Path | None = None) -> str:
    """Return the stylesheet that brings the charts' typeface, whole, with no other file."""
    fonts = {
        weight: keep(cache_folder, ("woff2", weight), partial(subset_woff2, weight))
        for weight in WEIGHTS
    }
    return render_font_css(fonts)


def _geometry(chart: Chart, settings: ChartSettings) -> Geometry:
    if settings.cache_folder is None:
        return fit_chart(chart, SCREEN_STYLES, settings.widest_px, settings.engine)
    key = (
        "geometry",
        _CHART.dump_json(chart).decode(),
        settings.engine,
        engine_version(settings.engine),
        str(settings.widest_px),
    )
    kept = keep(settings.cache_folder, key, partial(_make_geometry, chart, settings))
    return _GEOMETRY.validate_json(kept)


def _make_geometry(chart: Chart, settings: ChartSettings) -> bytes:
    geometry = fit_chart(chart, SCREEN_STYLES, settings.widest_px, settings.engine)
    return _GEOMETRY.dump_json(geometry)
