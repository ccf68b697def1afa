"""Where everything of a pin chart goes."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial

from pullcord.drawing.measure import text_width_px
from pullcord.drawing.pin_geometry import Box, Cell, Kind, Line, PinGeometry
from pullcord.drawing.pin_pen import Pen, PinStyle, bottom_of, lines_of, placed
from pullcord.model.spot import Spot
from pullcord.readings.pins import ConnectorView, PinReading, PinRow

WRITE_HERE = "Write what you read into the dashed boxes."

HALF_SHEET_PX = (700.0, 480.0)
"""What half an A4 sheet holds across and down at full size, in CSS px: 185 by 127 mm."""
LEAST_PRINTED_PX = 7 / 0.75
"""7 points: no type may be printed smaller, on whatever scale the chart fits half a sheet."""

STYLES = (
    PinStyle(176, 16, 14),
    PinStyle(136, 16, 13),
    PinStyle(110, 14, 12),
    PinStyle(84, 12, 11, box_px=24, padding_px=5, chip_px=12),
    PinStyle(57, 11, 10, box_px=22, padding_px=2, margin_px=4, chip_px=10),
)
"""From the roomiest to the narrowest."""


@dataclass(frozen=True)
class _Content:
    """What differs between a whole chart and one that only shows where the probes go."""

    name: str
    caption: str
    summary: str
    fill: Callable[[Pen, PinRow], None]


def lay_out_pins(view: ConnectorView) -> PinGeometry:
    """Return the chart's geometry in the roomiest style that fits the screen and half a sheet.

    On the screen a chart may be as tall as it needs. On paper it is scaled down to half a sheet, so
    the style must leave its smallest type readable; where none does, the one that prints largest
    is taken.
    """
    return _roomiest(
        view,
        _Content(
            name=f"{view.machine}-{view.name}",
            caption=f"{view.side_words} {WRITE_HERE}",
            summary=f"{_size(view)} {view.side_words} The table below says the same.",
            fill=_fill,
        ),
    )


def lay_out_probes(view: ConnectorView, probes: Mapping[str, str], name: str) -> PinGeometry:
    """Return a smaller chart that shows which pins the probes go to, and not what they read.

    `probes` gives the words for each probe, by the pin's name; `name` keeps several charts of one
    connector on a page apart.
    """
    marked = (f"{probes[pin.name]}: {pin.spot.label}." for pin in view.pins if pin.name in probes)
    return _roomiest(
        view,
        _Content(
            name=f"{view.machine}-{view.name}-{name}",
            caption=view.side_words,
            summary=" ".join((_size(view), view.side_words, *marked)),
            fill=partial(_fill_probe, probes),
        ),
    )


def _size(view: ConnectorView) -> str:
    return f"{view.connector.rows} by {view.connector.columns} places."


def _roomiest(view: ConnectorView, content: _Content) -> PinGeometry:
    drawn = [(_chart(view, content, style), style) for style in STYLES]
    across = [pair for pair in drawn if pair[0].width <= HALF_SHEET_PX[0]] or drawn[-1:]
    fitting = (pair for pair in across if printed_px(*pair) >= LEAST_PRINTED_PX)
    return next(fitting, max(across, key=lambda pair: printed_px(*pair)))[0]


def printed_px(chart: PinGeometry, style: PinStyle) -> float:
    """Return how large the smallest type comes out on half a sheet."""
    across, down = HALF_SHEET_PX
    return style.small_px * min(1.0, across / chart.width, down / chart.height)


def _chart(view: ConnectorView, content: _Content, style: PinStyle) -> PinGeometry:
    connector = view.connector
    tab = _tab_room(view, style)
    title = lines_of(connector.title, style.type_px + 2, 4000, "bold")
    inner_left = style.margin_px + tab["left"] + style.padding_px
    width = max(
        inner_left + connector.columns * style.cell_px + style.padding_px + tab["right"]
        + style.margin_px,
        min(title[0][1] + 2 * style.margin_px, 330.0),
    )  # fmt: skip
    title_lines = placed(
        lines_of(connector.title, style.type_px + 2, width - 2 * style.margin_px, "bold"),
        "title", style.margin_px, style.margin_px, style.type_px + 2,
    )  # fmt: skip
    top = bottom_of(title_lines, style) + tab["top"]
    cells = tuple(_cells(view, content, style, inner_left, top + style.padding_px))
    housing = Box(
        inner_left - style.padding_px, top,
        connector.columns * style.cell_px + 2 * style.padding_px,
        max(cell.frame.y + cell.frame.height for cell in cells) - top + style.padding_px,
    )  # fmt: skip
    latch, latch_line = _latch(view, style, housing)
    under = housing.y + housing.height + tab["bottom"] + style.margin_px
    caption = placed(
        lines_of(content.caption, style.small_px, width - 2 * style.margin_px, "regular"),
        "caption", style.margin_px, under, style.small_px,
    )  # fmt: skip
    return PinGeometry(
        name=content.name,
        title=connector.title,
        summary=content.summary,
        width=width,
        height=bottom_of(caption, style),
        housing=housing,
        latch=latch,
        cells=cells,
        lines=(*title_lines, latch_line, *caption),
    )


TAB_PX = (64.0, 20.0)
"""Length and depth of the latch as drawn."""
LATCH_WORD = "latch"


def _tab_room(view: ConnectorView, style: PinStyle) -> dict[str, float]:
    """Return how much room the latch takes on each side."""
    beside = text_width_px(LATCH_WORD, style.small_px, "regular") + TAB_PX[1] / 2 + 8
    depth = {"top": TAB_PX[1], "bottom": TAB_PX[1], "left": beside, "right": beside}
    latch = view.connector.latch
    return {side: room if side == latch else 0.0 for side, room in depth.items()}


def _latch(view: ConnectorView, style: PinStyle, housing: Box) -> tuple[Box, Line]:
    length, depth = TAB_PX
    word = text_width_px(LATCH_WORD, style.small_px, "regular")
    middle_x, middle_y = housing.x + housing.width / 2, housing.y + housing.height / 2
    side = view.connector.latch
    if side in {"top", "bottom"}:
        y = housing.y - depth if side == "top" else housing.y + housing.height
        box = Box(middle_x - length / 2, y, length, depth)
        text_x, text_y = middle_x - word / 2, y + depth / 2 + style.small_px * 0.35
    else:
        x = housing.x - depth / 2 if side == "left" else housing.x + housing.width
        box = Box(x, middle_y - length / 2, depth / 2, length)
        text_x = x - word - 4 if side == "left" else x + depth / 2 + 4
        text_y = middle_y + style.small_px * 0.35
    return box, Line(LATCH_WORD, "latch", text_x, text_y, word, style.small_px)


def _cells(
    view: ConnectorView, content: _Content, style: PinStyle, left: float, top: float
) -> Iterator[Cell]:
    pins = {row.spot: row for row in view.pins}
    columns = range(1, view.connector.columns + 1)
    for row in range(1, view.connector.rows + 1):
        spots = [Spot(row, column) for column in columns]
        pens = [Pen(left + (spot.column - 1) * style.cell_px, top, style) for spot in spots]
        drawn = [
            _cell(pins.get(spot), spot, spot in view.blanks, content, pen)
            for spot, pen in zip(spots, pens, strict=True)
        ]
        height = max(cell.frame.height for cell in drawn)
        for cell in drawn:
            yield _as_tall(cell, height)
        top += height


def _cell(pin: PinRow | None, spot: Spot, is_blank: bool, content: _Content, pen: Pen) -> Cell:
    kind: Kind = "blank" if is_blank else "unknown"
    if pin is None:
        pen.write(spot.label, "place", "regular")
        pen.write("blank" if is_blank else "not known", "where", "regular")
    else:
        content.fill(pen, pin)
        kind = "probe" if pen.badge else "pin"
    return Cell(kind, pen.frame, tuple(pen.lines), pen.chip, tuple(pen.boxes), pen.badge)


def _fill(pen: Pen, pin: PinRow) -> None:
    pen.write_ends(pin.spot.label, pin.wire.code if pin.wire else "?")
    pen.paint(pin.wire)
    pen.write(pin.function, "function", "regular")
    for reading in pin.readings:
        pen.write(reading.short, "value", "bold")
        pen.write(_where(reading), "where", "regular")
        pen.leave_box()
    if not pin.readings:
        pen.leave_box()


def _fill_probe(probes: Mapping[str, str], pen: Pen, pin: PinRow) -> None:
    pen.write_ends(pin.spot.label, pin.wire.code if pin.wire else "?")
    pen.paint(pin.wire)
    pen.write(pin.function, "function", "regular")
    if pin.name in probes:
        pen.write_badge(probes[pin.name])


def _where(reading: PinReading) -> str:
    return f"to {reading.against}" + (f", {reading.key}" if reading.key else "")


def _as_tall(cell: Cell, height: float) -> Cell:
    frame = Box(cell.frame.x, cell.frame.y, cell.frame.width, height)
    return replace(cell, frame=frame)
