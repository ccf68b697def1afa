"""The flowchart of a page, drawn for the screen and cut to sheets for paper."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from pullcord.drawing import ChartSettings, OtherProcedure, draw_chart
from pullcord.model.procedure import Library, Procedure
from pullcord.pages.address import link, procedure_uri
from pullcord.pages.kit import Kit
from pullcord.pages.sheets import SheetsView, sheets_view
from pullcord.pages.step import Boxes


@dataclass(frozen=True)
class ChartView:
    """A flowchart on the page."""

    svg: Markup
    sheets: SheetsView


def chart_view(kit: Kit, procedure: Procedure, library: Library, boxes: Boxes) -> ChartView:
    """Return a procedure's flowchart, drawn. Raises LayoutError."""
    own = procedure_uri(procedure.procedure)
    others = {
        name: OtherProcedure(other.title, link(own, procedure_uri(name)))
        for name, other in library.procedures.items()
    }
    settings = ChartSettings(
        engine=kit.settings.layout_engine,
        cache_folder=kit.settings.cache_folder,
        template_dirs=kit.settings.template_dirs,
    )
    drawn = draw_chart(procedure, boxes, settings, others)
    svg = Markup(drawn.svg)  # noqa: S704 (escaped by the drawing's own template)
    return ChartView(svg, sheets_view(drawn.geometry, kit.words))
