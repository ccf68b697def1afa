"""The flowchart of a page, drawn for the screen and cut to sheets for paper."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from pullcord.drawing import ChartSettings, ChartWords, DrawnChart, OtherProcedure, draw_charts
from pullcord.model.target import Target
from pullcord.pages.kit import Kit
from pullcord.pages.reading import chart_limits
from pullcord.pages.sheets import SheetsView, sheets_view
from pullcord.pages.step import Boxes
from pullcord.pages.way import Signposts


@dataclass(frozen=True)
class ChartView:
    """A flowchart on the page."""

    svg: Markup
    sheets: SheetsView


def chart_views(kit: Kit, pages: Sequence[Signposts], boxes: Boxes) -> tuple[ChartView, ...]:
    """Return a procedure's flowchart for each of its pages, laid out once. Raises LayoutError."""
    settings = ChartSettings(
        engine=kit.settings.layout_engine,
        cache_folder=kit.settings.cache_folder,
        template_dirs=kit.settings.template_dirs,
    )
    never = _never(pages)
    versions = [_words(kit, posts, never) for posts in pages]
    drawn = draw_charts(pages[0].procedure, boxes, settings, versions)
    return tuple(_view(kit, chart) for chart in drawn)


def _view(kit: Kit, drawn: DrawnChart) -> ChartView:
    svg = Markup(drawn.svg)  # noqa: S704 (escaped by the drawing's own template)
    return ChartView(svg, sheets_view(drawn.geometry, kit.words))


def _never(pages: Sequence[Signposts]) -> dict[str, frozenset[str]]:
    """Return the answers that none of the pages has: the chart is laid out once for all."""
    first, *rest = pages
    return {
        f"step:{name}": frozenset.intersection(first.never(name), *(p.never(name) for p in rest))
        for name in first.readings
    }


def _words(kit: Kit, posts: Signposts, never: Mapping[str, frozenset[str]]) -> ChartWords:
    others = {
        name: OtherProcedure(other.title, posts.href(Target("procedure", name)))
        for name, other in posts.library.procedures.items()
    }
    limits = {
        f"step:{name}": chart_limits(kit.words, step, step.reading, posts.subject)
        for name, step in posts.procedure.steps.items()
        if step.reading
    }
    return ChartWords(others, limits, never)
