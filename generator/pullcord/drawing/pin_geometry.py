"""What a pin chart is made of: plain geometry, in px, from the top left."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Role = Literal["title", "place", "code", "function", "value", "where", "caption", "latch", "probe"]


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


Kind = Literal["pin", "probe", "blank", "unknown"]
"""`probe` is a pin that a probe goes to."""


@dataclass(frozen=True)
class Cell:
    """One place of the connector."""

    kind: Kind
    frame: Box
    lines: tuple[Line, ...]
    chip: Chip | None
    boxes: tuple[Box, ...]
    """Empty, to write what was read."""
    badge: Box | None = None
    """Behind the words that say which probe goes here."""


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
