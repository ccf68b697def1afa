"""A connector drawn face-on, as an SVG element to stand inside a page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, StrictUndefined, TemplateError

from pullcord.drawing.pin_geometry import Box, Cell, Chip, Line, PinGeometry
from pullcord.drawing.pin_layout import lay_out_pins, lay_out_probes
from pullcord.errors import PullcordError
from pullcord.readings.pins import ConnectorView
from pullcord.source.places import site_templates

_TEMPLATE = "drawing/pin_chart.svg.j2"

WIRE_FILL = {
    "BK": "#1a1a1a", "BN": "#7a4a21", "RD": "#d01c1c", "OG": "#f08019", "YE": "#f5d800",
    "GN": "#1f8a3b", "BU": "#1f5fbf", "VT": "#7d3fa8", "GY": "#8c9196", "WH": "#ffffff",
    "PK": "#f29db5", "TQ": "#25b5b0", "GD": "#c9a227", "SR": "#c6cacd",
}  # fmt: skip
"""What each colour code is painted with. The code always stands beside it."""


CROSS_GAP_PX = 6.0


@dataclass(frozen=True)
class BoxView:
    """A rectangle, its numbers written out."""

    x: str
    y: str
    width: str
    height: str
    fill: str = ""


@dataclass(frozen=True)
class LineView:
    """A line of text, its numbers written out."""

    text: str
    css: str
    x: str
    y: str
    width: str
    size: str


@dataclass(frozen=True)
class CellView:
    """One place of the connector."""

    css: str
    frame: BoxView
    cross: str
    """SVG path data of a blank's cross; "" for a pin."""
    chips: tuple[BoxView, ...]
    """The wire's colours, the base first."""
    outline: BoxView | None
    """Around the wire's colours."""
    boxes: tuple[BoxView, ...]
    badge: BoxView | None
    lines: tuple[LineView, ...]


@dataclass(frozen=True)
class PinChartView:
    """A whole pin chart, as the template lays it out."""

    id: str
    title: str
    summary: str
    width: str
    height: str
    housing: BoxView
    latch: BoxView
    cells: tuple[CellView, ...]
    lines: tuple[LineView, ...]


def render_pin_chart(view: ConnectorView, template_dirs: tuple[Path, ...] = ()) -> str:
    """Return an `<svg>` element; everything in it is escaped. `template_dirs` go before our own.

    Raises PullcordError when a project's own template cannot be used.
    """
    return _render(lay_out_pins(view), template_dirs)


def render_probes(
    view: ConnectorView,
    probes: Mapping[str, str],
    name: str,
    template_dirs: tuple[Path, ...] = (),
) -> str:
    """Return an `<svg>` element that shows which pins the probes go to, with a word on each.

    `probes` gives the words by the pin's name; `name` is part of the element's id. Raises
    PullcordError when a project's own template cannot be used.
    """
    return _render(lay_out_probes(view, probes, name), template_dirs)


def _render(geometry: PinGeometry, template_dirs: tuple[Path, ...]) -> str:
    templates = _environment((*template_dirs, site_templates()))
    try:
        return templates.get_template(_TEMPLATE).render(chart=_view(geometry))
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


def _view(geometry: PinGeometry) -> PinChartView:
    # The heavy frames of the probes' pins come last, so that no neighbour covers them.
    cells = sorted(geometry.cells, key=lambda cell: cell.kind == "probe")
    return PinChartView(
        id=f"pc-pins-{geometry.name}",
        title=geometry.title,
        summary=geometry.summary,
        width=_number(geometry.width),
        height=_number(geometry.height),
        housing=_box(geometry.housing),
        latch=_box(geometry.latch),
        cells=tuple(_cell(cell) for cell in cells),
        lines=tuple(_line(line) for line in geometry.lines),
    )


def _cell(cell: Cell) -> CellView:
    return CellView(
        css=f"pc-cell pc-cell-{cell.kind}",
        frame=_box(cell.frame),
        cross=_cross(cell) if cell.kind == "blank" else "",
        chips=_chips(cell.chip) if cell.chip else (),
        outline=_box(cell.chip.base) if cell.chip else None,
        boxes=tuple(_box(box) for box in cell.boxes),
        badge=_box(cell.badge) if cell.badge else None,
        lines=tuple(_line(line) for line in cell.lines),
    )


def _chips(chip: Chip) -> tuple[BoxView, ...]:
    base = _box(chip.base, WIRE_FILL[chip.base_code])
    second = (_box(chip.second, WIRE_FILL[chip.second_code]),) if chip.second else ()
    return (base, *second)


def _cross(cell: Cell) -> str:
    """Return a cross over what the text leaves of a blank; "" where it leaves nothing."""
    frame, below = cell.frame, cell.lines[-1].y + CROSS_GAP_PX
    if frame.y + frame.height - below < CROSS_GAP_PX:
        return ""
    left, right = _number(frame.x), _number(frame.x + frame.width)
    top, bottom = _number(below), _number(frame.y + frame.height)
    return f"M{left} {top}L{right} {bottom}M{left} {bottom}L{right} {top}"


def _box(box: Box, fill: str = "") -> BoxView:
    return BoxView(_number(box.x), _number(box.y), _number(box.width), _number(box.height), fill)


def _line(line: Line) -> LineView:
    return LineView(
        text=line.text,
        css=f"pc-{line.role}",
        x=_number(line.x),
        y=_number(line.y),
        width=_number(line.width),
        size=_number(line.size),
    )


def _number(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")
