"""A small drawing to scale as an SVG element to stand inside a page."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, StrictUndefined, TemplateError

from pullcord.drawing.plot import Plot
from pullcord.errors import PullcordError
from pullcord.source.places import site_templates

_TEMPLATE = "drawing/plot.svg.j2"


@dataclass(frozen=True)
class PathView:
    """One shape or line."""

    css: str
    d: str
    """SVG path data."""


@dataclass(frozen=True)
class TextView:
    """One line of text, its numbers written out."""

    text: str
    css: str
    x: str
    y: str
    width: str
    size: str


@dataclass(frozen=True)
class PlotView:
    """A whole drawing, as the template lays it out."""

    id: str
    title: str
    summary: str
    width: str
    height: str
    paths: tuple[PathView, ...]
    texts: tuple[TextView, ...]


def render_plot(plot: Plot, template_dirs: tuple[Path, ...] = ()) -> str:
    """Return an `<svg>` element; everything in it is escaped. `template_dirs` go before our own.

    Raises PullcordError when a project's own template cannot be used.
    """
    templates = _environment((*template_dirs, site_templates()))
    try:
        return templates.get_template(_TEMPLATE).render(plot=_view(plot))
    except TemplateError as error:
        raise PullcordError(f"template {_TEMPLATE}: {error}") from error


@cache
def _environment(folders: tuple[Path, ...]) -> Environment:
    return Environment(
        loader=ChoiceLoader([FileSystemLoader(folder) for folder in folders]),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _view(plot: Plot) -> PlotView:
    rects = (
        PathView(f"pc-plot-{r.role}", f"M{_n(r.x)} {_n(r.y)}h{_n(r.width)}v{_n(r.height)}"
                 f"h{_n(-r.width)}z")
        for r in plot.rects
    )  # fmt: skip
    strokes = (
        PathView(f"pc-plot-{s.role}", f"M{_n(s.x1)} {_n(s.y1)}L{_n(s.x2)} {_n(s.y2)}")
        for s in plot.strokes
    )
    marks = (PathView(f"pc-plot-{m.role}", f"{_line(m.points)}Z") for m in plot.marks)
    return PlotView(
        id=plot.id,
        title=plot.title,
        summary=plot.summary,
        width=_n(plot.width),
        height=_n(plot.height),
        paths=(*rects, *strokes, *marks),
        texts=tuple(
            TextView(
                t.text, f"pc-plot-{t.role} pc-plot-{t.weight}", _n(t.x), _n(t.y), _n(t.width),
                _n(t.size),
            )
            for t in plot.texts
        ),
    )  # fmt: skip


def _line(points: Iterable[tuple[float, float]]) -> str:
    return "M" + "L".join(f"{_n(x)} {_n(y)}" for x, y in points)


def _n(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")
