"""From a procedure to its drawn flowchart: the one thing pages need."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from pydantic import TypeAdapter

from pullcord.drawing.cache import keep, keep_value
from pullcord.drawing.chart import Chart, OtherProcedure, chart_of
from pullcord.drawing.fit import fit_chart
from pullcord.drawing.font import WEIGHTS, render_font_css, subset_woff2
from pullcord.drawing.geometry import Geometry
from pullcord.drawing.layout import Engine, engine_version
from pullcord.drawing.reword import reword, roomiest
from pullcord.drawing.style import SCREEN_STYLES, Style
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


@dataclass(frozen=True)
class ChartWords:
    """What may differ between two pages with the same chart; see `chart_of`."""

    others: Mapping[str, OtherProcedure] = field(default_factory=dict)
    """Title and link of the procedures it may hand over to, by name."""
    limits: Mapping[str, str] = field(default_factory=dict)
    """What a reading should be, in a few words, by graph node."""
    never: Mapping[str, frozenset[str]] = field(default_factory=dict)
    """Answers that no reading can be, by graph node; the same on all pages."""


def draw_chart(
    procedure: Procedure,
    boxes: Mapping[str, tuple[Box, ...]],
    settings: ChartSettings,
    others: Mapping[str, OtherProcedure] | None = None,
) -> DrawnChart:
    """Draw a procedure's flowchart; `boxes` and `others` are those of `chart_of`.

    Raises LayoutError when the layout engine is missing, hangs, dies or answers nonsense.
    """
    (drawn,) = draw_charts(procedure, boxes, settings, (ChartWords(others or {}),))
    return drawn


def draw_charts(
    procedure: Procedure,
    boxes: Mapping[str, tuple[Box, ...]],
    settings: ChartSettings,
    versions: Sequence[ChartWords],
) -> Iterator[DrawnChart]:
    """Draw a procedure's flowchart for several pages; it is laid out once for all of them.

    Raises LayoutError as `draw_chart` does.
    """
    charts = [
        chart_of(procedure, boxes, words.others, words.limits, words.never) for words in versions
    ]
    geometry = laid_out(roomiest(charts), SCREEN_STYLES, settings)
    drawn = {chart: _drawn(reword(geometry, chart), settings) for chart in dict.fromkeys(charts)}
    yield from (drawn[chart] for chart in charts)


def _drawn(geometry: Geometry, settings: ChartSettings) -> DrawnChart:
    return DrawnChart(render_chart(geometry, settings.template_dirs), geometry)


def chart_font_css(cache_folder: Path | None = None) -> str:
    """Return the stylesheet that brings the charts' typeface, whole, with no other file."""
    fonts = {
        weight: keep(cache_folder, ("woff2", weight), partial(subset_woff2, weight))
        for weight in WEIGHTS
    }
    return render_font_css(fonts)


def laid_out(chart: Chart, styles: Sequence[Style], settings: ChartSettings) -> Geometry:
    """Return where everything on a chart lies, in the first of the styles in which it fits.

    What was laid out is kept. Raises LayoutError as `draw_chart` does.
    """
    make = partial(fit_chart, chart, styles, settings.widest_px, settings.engine)
    if settings.cache_folder is None:
        return make()
    key = (
        "geometry",
        _CHART.dump_json(chart).decode(),
        repr(styles),
        settings.engine,
        engine_version(settings.engine),
        str(settings.widest_px),
    )
    return keep_value(settings.cache_folder, key, _GEOMETRY, make)
