"""One cell of a pin chart, its parts stacked from the top down, in one set of measures."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.drawing.font import Weight
from pullcord.drawing.measure import text_width_px
from pullcord.drawing.pin_geometry import Box, Chip, Line, Role
from pullcord.drawing.wrap import measure_words, wrap_balanced
from pullcord.model.wire import Wire


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


class Pen:
    """Stacks the parts of one cell from the top down."""

    def __init__(self, left: float, top: float, style: PinStyle) -> None:
        """Begin an empty cell at its top left corner."""
        self.left, self.top, self.style = left, top, style
        self.x, self.y = left + style.padding_px, top + style.padding_px
        self.room = style.cell_px - 2 * style.padding_px
        self.lines: list[Line] = []
        self.boxes: list[Box] = []
        self.chip: Chip | None = None
        self.badge: Box | None = None

    @property
    def frame(self) -> Box:
        """The cell around all that was stacked so far."""
        height = self.y - self.top + self.style.padding_px
        return Box(self.left, self.top, self.style.cell_px, height)

    def write(self, text: str, role: Role, weight: Weight) -> None:
        """Write a text over as many lines as it needs."""
        size = self.style.type_px if role in {"function", "value"} else self.style.small_px
        lines = placed(lines_of(text, size, self.room, weight), role, self.x, self.y, size)
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

    def write_badge(self, text: str) -> None:
        """Write words on a plate as wide as the cell's text."""
        size, top = self.style.small_px, self.y
        self.y += size * 0.3
        lines = placed(
            lines_of(text, size, self.room - size, "bold"),
            "probe", self.x + size / 2, self.y, size,
        )  # fmt: skip
        self.lines += lines
        self.y = lines[-1].y + size * 0.65
        self.badge = Box(self.x, top, self.room, self.y - top)

    def leave_box(self) -> None:
        """Leave an empty box to write a reading into."""
        self.y += 3
        self.boxes.append(Box(self.x, self.y, self.room, self.style.box_px))
        self.y += self.style.box_px + 3


def lines_of(text: str, size: float, room: float, weight: Weight) -> list[tuple[str, float]]:
    """Return a text broken into lines that fit the room, each with its width in px."""
    lines = wrap_balanced(measure_words(text, room, size, weight), room)
    return [(line, text_width_px(line, size, weight)) for line in lines]


def placed(
    lines: list[tuple[str, float]], role: Role, x: float, y: float, size: float
) -> list[Line]:
    """Return lines of text one below the other; the first one's top is at `y`."""
    return [
        Line(text, role, x, y + size * (0.95 + 1.25 * number), width, size)
        for number, (text, width) in enumerate(lines)
    ]


def bottom_of(lines: list[Line], style: PinStyle) -> float:
    """Return where whatever stands below these lines may begin."""
    return lines[-1].y + lines[-1].size * 0.35 + style.margin_px
