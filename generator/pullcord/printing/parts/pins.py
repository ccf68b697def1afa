"""The pin charts of a machine, two to a sheet: each half can be cut off and go to the machine."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass
from itertools import groupby
from typing import Any

from pullcord.drawing.pin_chart import WIRE_FILL
from pullcord.drawing.pin_geometry import PinGeometry
from pullcord.drawing.pin_layout import lay_out_pins
from pullcord.errors import PullcordError
from pullcord.pages.imprint import printed_lines
from pullcord.pages.subject import Subject
from pullcord.printing.frame import Frame, Said
from pullcord.printing.paper import MM_PER_PX, PT_PER_PX, Paper
from pullcord.printing.press import Press, frames_for

LEAST_TYPE_PT = 7.0
CUT_MM = 10.0
"""Around the line to cut along."""


@dataclass(frozen=True)
class _Leaf:
    """One chart where it goes."""

    geometry: PinGeometry
    frame: Frame
    halves: int
    """Into how many parts its sheet is cut."""

    @property
    def height_mm(self) -> float:
        """Of the leaf, with head and foot."""
        cuts = self.halves - 1
        return (self.frame.paper.inner_height_mm - cuts * CUT_MM) / self.halves

    @property
    def mm_per_px(self) -> float:
        """The scale at which the chart fills the leaf, at most full size."""
        across, _ = self.frame.body_mm
        down = self.height_mm - self.frame.head_mm - self.frame.foot_mm
        return min(MM_PER_PX, across / self.geometry.width, down / self.geometry.height)

    @property
    def type_pt(self) -> float:
        """The size of its smallest type as printed."""
        lines = [
            *self.geometry.lines,
            *(line for cell in self.geometry.cells for line in cell.lines),
        ]
        return min(line.size for line in lines) * self.mm_per_px / MM_PER_PX * PT_PER_PX


def pin_part(press: Press, subject: Subject) -> Mapping[str, Any]:
    """Return the pin charts of a machine as data for the template.

    Raises PullcordError when its sheet has no connector, or one too large for this paper.
    """
    if not subject.plugs:
        raise PullcordError(f"the sheet of `{subject.name}` has no connector to print")
    frames = frames_for(press, _said(press, subject))
    leaves = [_leaf(lay_out_pins(view), frames) for view in subject.plugs.values()]
    return {
        "kind": "pins",
        **frames[0].data(),
        "fills": WIRE_FILL,
        "sheets": [_sheet(press, held) for held in _sheets(leaves)],
    }


def _said(press: Press, subject: Subject) -> Said:
    return Said(
        title=press.words["pins_title"].format(title=subject.title),
        below="",
        machine=subject.title,
        imprint=printed_lines(press.kit, sheet=subject.digest),
        deferral=(press.kit.words["sheet_deferral"],),
    )


def _leaf(geometry: PinGeometry, frames: Sequence[Frame]) -> _Leaf:
    """Return the chart on half a sheet, or on a whole one where it could not be read on half."""
    half = _Leaf(geometry, frames[0], 2)
    whole = [_Leaf(geometry, frame, 1) for frame in frames]
    leaf = half if half.type_pt >= LEAST_TYPE_PT else max(whole, key=lambda one: one.type_pt)
    if leaf.type_pt < LEAST_TYPE_PT:
        raise PullcordError(
            f"`{geometry.title}` has too many pins for this paper: take larger paper"
        )
    return leaf


def _sheets(leaves: Sequence[_Leaf]) -> Iterator[tuple[_Leaf, ...]]:
    for halves, run in groupby(leaves, key=lambda leaf: leaf.halves):
        held = list(run)
        yield from (tuple(held[at : at + halves]) for at in range(0, len(held), halves))


def _sheet(press: Press, leaves: tuple[_Leaf, ...]) -> Mapping[str, Any]:
    paper: Paper = leaves[0].frame.paper
    return {
        "paper": vars(paper),
        "cut_mm": CUT_MM,
        "leaves": [
            {
                "geometry": asdict(leaf.geometry),
                "alt": press.words["pins_alt"].format(title=leaf.geometry.title),
                "mm_per_px": leaf.mm_per_px,
                "height_mm": leaf.height_mm,
                **leaf.frame.data(),
            }
            for leaf in leaves
        ],
    }
