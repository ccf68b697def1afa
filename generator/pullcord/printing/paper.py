"""Sheets of paper: sizes by ISO 216 and ANSI/ASME Y14.1, and the room between the margins.

The long side is the binding side: ISO 838 puts the holes 12 mm from that edge, 6 mm wide, so
nothing is printed within 20 mm of it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

PaperName = Literal["a4", "letter", "a3"]
PAPERS: tuple[PaperName, ...] = ("a4", "letter", "a3")
Kind = Literal["flowchart", "steps", "pins", "record", "walkaway", "job", "binder"]
KINDS: tuple[Kind, ...] = ("flowchart", "steps", "pins", "record", "walkaway", "job", "binder")
"""What can be printed."""
MM_PER_PX = 25.4 / 96
PT_PER_PX = 72 / 96
BINDING_MM = 20.0
EDGE_MM = 10.0


@dataclass(frozen=True)
class Paper:
    """A sheet as it is held to be read. Lengths in mm."""

    width_mm: float
    height_mm: float
    left_mm: float
    """Margin; the binding edge of an upright sheet."""
    top_mm: float
    """Margin; the binding edge of a sheet that lies on its side."""
    right_mm: float = EDGE_MM
    bottom_mm: float = EDGE_MM

    @property
    def inner_width_mm(self) -> float:
        """The width between the margins."""
        return self.width_mm - self.left_mm - self.right_mm

    @property
    def inner_height_mm(self) -> float:
        """The height between the margins."""
        return self.height_mm - self.top_mm - self.bottom_mm


_SHORT_LONG_MM: dict[PaperName, tuple[float, float]] = {
    "a4": (210.0, 297.0),
    "letter": (215.9, 279.4),
    "a3": (297.0, 420.0),
}


def upright(name: PaperName) -> Paper:
    """Return the sheet with its long side upright, bound on the left."""
    short, long = _SHORT_LONG_MM[name]
    return Paper(width_mm=short, height_mm=long, left_mm=BINDING_MM, top_mm=EDGE_MM)


def on_its_side(name: PaperName) -> Paper:
    """Return the sheet with its long side across, bound at the top."""
    short, long = _SHORT_LONG_MM[name]
    return Paper(width_mm=long, height_mm=short, left_mm=EDGE_MM, top_mm=BINDING_MM)
