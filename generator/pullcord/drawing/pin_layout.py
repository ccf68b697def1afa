"""Where everything of a pin chart goes: plain geometry, in px, from the top left."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from pullcord.drawing.font import Weight
from pullcord.drawing.measure import text_width_px
from pullcord.drawing.wrap import measure_words, wrap_balanced
from pullcord.model.spot import Spot
from pullcord.model.wire import Wire
from pullcord.readings.pins import ConnectorView, PinReading, PinRow

Role = Literal["title", "place", "code", "function", "value", "where", "caption", "latch"]

HALF_SHEET_PX = (700.0, 480.0)
"""What half an A4 sheet holds across and down at full size, in CSS px: 185 by 127 mm."""
LEAST_PRINTED_PX = 7 / 0.75
"""7 points: no type may be printed smaller, on whatever scale the chart fits half a sheet."""


@dataclass(frozen=True)
class PinStyle:
    """One set of measures. The first of several that fits half a sheet is taken for a chart."""

    cell_px: float
    """Width of a pin's cell."""
    type_px: float
    """Size of functions, codes and values."""
    small_px: float
    """Size of everything else; 10 px print as 7.5 points."""
    box_px: float = 28
    """Height of the box to write a reading into."""
    padding_px: float = 7
    margin_px: float = 10
    chip_px: float = 16
    """Height of the wire's colour."""


STYLES = (
    PinStyle(176, 16, 14),
    PinStyle(136, 16, 13),
    PinStyle(110, 14, 12),
    PinStyle(84, 12, 11, box_px=24, padding_px=5, chip_px=12),
    PinStyle(57, 11, 10, box_px=22, padding_px=2, margin_px=4, chip_px=10),
)
"""From the roomiest to the narrowest."""


@dataclass(frozen=True)
class Line:
    """One line of text."""

    text: str
    role: Role
    x: float
    y: float
    """Baseline."""
    width: float
    size: float


@dataclass(frozen=True)
class Box:
    """A rectangle."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True)
class Chip:
    """A wire's colour, with what lies across or beside it."""

    base: Box
    base_code: str
    second: Box | None
    second_code: str


@dataclass(frozen=True)
class Cell:
    """One place of the connector."""

    kind: Literal["pin", "blank", "unknown"]
    frame: Box
    lines: tuple[Line, ...]
    chip: Chip | None
    boxes: tuple[Box, ...]
    """Empty, to write what was read."""


@dataclass(frozen=True)
class PinGeometry:
    """A whole pin chart."""

    name: str
    """Machine and connector: no two charts of a library share it."""
    title: str
    summary: str
    width: float
    height: float
    housing: Box
    latch: Box
    cells: tuple[Cell, ...]
    lines: tuple[Line, ...]
    """Title, latch and caption."""


def lay_out_pins(view: ConnectorView) -> PinGeometry:
    """Return the chart's geometry in the roomiest style that fits the screen and half a sheet.

    On the screen a chart may be as tall as it needs. On paper it is scaled down to half a sheet, so
    the style must leave its smallest type readable; where none does, the one that prints largest
    is taken.
    """
    drawn = [(_chart(view, style), style) for style in STYLES]
    across = [pair for pair in drawn if pair[0].width <= HALF_SHEET_PX[0]] or drawn[-1:]
    fitting = (pair for pair in across if printed_px(*pair) >= LEAST_PRINTED_PX)
    return next(fitting, max(across, key=lambda pair: printed_px(*pair)))[0]


def printed_px(chart: PinGeometry, style: PinStyle) -> float:
    """Return how large the smallest type comes out on half a sheet."""
    across, down = HALF_SHEET_PX
    return style.small_px * min(1.0, across / chart.width, down / chart.height)


def _chart(view: ConnectorView, style: PinStyle) -> PinGeometry:
    connector = view.connector
    tab = _tab_room(view, style)
    title = _lines(connector.title, "title", style.type_px + 2, 4000, "bold")
    inner_left = style.margin_px + tab["left"] + style.padding_px
    width = max(
        inner_left + connector.columns * style.cell_px + style.padding_px + tab["right"]
        + style.margin_px,
        min(title[0][1] + 2 * style.margin_px, 330.0),
    )  # fmt: skip
    title_lines = _placed(
        _lines(connector.title, "title", style.type_px + 2, width - 2 * style.margin_px, "bold"),
        "title", style.margin_px, style.margin_px, style.type_px + 2,
    )  # fmt: skip
    top = _bottom(title_lines, style) + tab["top"]
    cells = tuple(_cells(view, style, inner_left, top + style.padding_px))
    housing = Box(
        inner_left - style.padding_px, top,
        connector.columns * style.cell_px + 2 * style.padding_px,
        max(cell.frame.y + cell.frame.height for cell in cells) - top + style.padding_px,
    )  # fmt: skip
    latch, latch_line = _latch(view, style, housing)
    under = housing.y + housing.height + tab["bottom"] + style.margin_px
    caption = _placed(
        _lines(view.side_words, "caption", style.small_px, width - 2 * style.margin_px, "regular"),
        "caption", style.margin_px, under, style.small_px,
    )  # fmt: skip
    return PinGeometry(
        name=f"{view.machine}-{view.name}",
        title=connector.title,
        summary=f"{connector.rows} by {connector.columns} places. {view.side_words} "
        "The table below says the same.",
        width=width,
        height=_bottom(caption, style),
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


def _cells(view: ConnectorView, style: PinStyle, left: float, top: float) -> Iterator[Cell]:
    pins = {row.spot: row for row in view.pins}
    columns = range(1, view.connector.columns + 1)
    for row in range(1, view.connector.rows + 1):
        spots = [Spot(row, column) for column in columns]
        drawn = [
            _cell(pins.get(spot), spot, spot in view.blanks, style, left, top) for spot in spots
        ]
        height = max(cell.frame.height for cell in drawn)
        for cell in drawn:
            yield _as_tall(cell, height)
        top += height


def _cell(
    pin: PinRow | None, spot: Spot, is_blank: bool, style: PinStyle, left: float, top: float
) -> Cell:
    x = left + (spot.column - 1) * style.cell_px
    pen = _Pen(x + style.padding_px, top + style.padding_px, style)
    if pin is None:
        pen.write(spot.label, "place", "regular")
        pen.write("blank" if is_blank else "not known", "where", "regular")
    else:
        _fill(pen, pin)
    frame = Box(x, top, style.cell_px, pen.y - top + style.padding_px)
    kind: Literal["pin", "blank", "unknown"] = "pin" if pin else "blank" if is_blank else "unknown"
    return Cell(kind, frame, tuple(pen.lines), pen.chip, tuple(pen.boxes))


def _fill(pen: _Pen, pin: PinRow) -> None:
    pen.write_ends(pin.spot.label, pin.wire.code if pin.wire else "?")
    pen.paint(pin.wire)
    pen.write(pin.function, "function", "regular")
    for reading in pin.readings:
        pen.write(reading.short, "value", "bold")
        pen.write(_where(reading), "where", "regular")
        pen.leave_box()
    if not pin.readings:
        pen.leave_box()


def _where(reading: PinReading) -> str:
    return f"to {reading.against}" + (f", {reading.key}" if reading.key else "")


class _Pen:
    """Stacks the parts of one cell from the top down."""

    def __init__(self, x: float, y: float, style: PinStyle) -> None:
        self.x, self.y, self.style = x, y, style
        self.room = style.cell_px - 2 * style.padding_px
        self.lines: list[Line] = []
        self.boxes: list[Box] = []
        self.chip: Chip | None = None

    def write(self, text: str, role: Role, weight: Weight) -> None:
        size = self.style.type_px if role in {"function", "value"} else self.style.small_px
        lines = _placed(_lines(text, role, size, self.room, weight), role, self.x, self.y, size)
        self.lines += lines
        self.y = lines[-1].y + size * 0.35

    def write_ends(self, left: str, right: str) -> None:
        """Write two short words on one line, or on two where they do not fit beside each other."""
        small, size = self.style.small_px, self.style.type_px
        left_width = text_width_px(left, small, "regular")
        right_width = text_width_px(right, size, "bold")
        if left_width + right_width + 4 > self.room:
            self.write(left, "place", "regular")
            x = self.x
        else:
            x = self.x + self.room - right_width
            baseline = self.y + size * 0.95
            self.lines.append(Line(left, "place", self.x, baseline, left_width, small))
        self.lines.append(Line(right, "code", x, self.y + size * 0.95, right_width, size))
        self.y += size * 1.3

    def paint(self, wire: Wire | None) -> None:
        """Draw the wire: a stripe along it, or a second colour over its right half."""
        if wire is None:
            return
        base = Box(self.x, self.y, self.room, self.style.chip_px)
        second = None
        if wire.second and wire.is_striped:
            band = base.height * 0.36
            second = Box(base.x, base.y + (base.height - band) / 2, base.width, band)
        elif wire.second:
            second = Box(base.x + base.width / 2, base.y, base.width / 2, base.height)
        self.chip = Chip(base, wire.base, second, wire.second)
        self.y += self.style.chip_px + 3

    def leave_box(self) -> None:
        """Leave an empty box to write a reading into."""
        self.y += 3
        self.boxes.append(Box(self.x, self.y, self.room, self.style.box_px))
        self.y += self.style.box_px + 3


def _as_tall(cell: Cell, height: float) -> Cell:
    frame = Box(cell.frame.x, cell.frame.y, cell.frame.width, height)
    return Cell(cell.kind, frame, cell.lines, cell.chip, cell.boxes)


def _lines(
    text: str, role: Role, size: float, room: float, weight: Weight
) -> list[tuple[str, float]]:
    lines = wrap_balanced(measure_words(text, room, size, weight), room)
    return [(line, text_width_px(line, size, weight)) for line in lines]


def _placed(
    lines: list[tuple[str, float]], role: Role, x: float, y: float, size: float
) -> list[Line]:
    return [
        Line(text, role, x, y + size * (0.95 + 1.25 * number), width, size)
        for number, (text, width) in enumerate(lines)
    ]


def _bottom(lines: list[Line], style: PinStyle) -> float:
    return lines[-1].y + lines[-1].size * 0.35 + style.margin_px
