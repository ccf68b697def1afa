"""What stands around every sheet: what it is, for which machine, how old, what goes before it.

All of it is broken into lines here, so that the room left for the rest is known.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pullcord.printing.lines import break_lines
from pullcord.printing.paper import Paper

TITLE_PT, TITLE_MM = 13.0, 5.6
BELOW_PT, BELOW_MM = 8.5, 3.7
FOOT_PT, FOOT_MM = 7.0, 2.8
"""Type size, and the height of a line."""
FORM_PT, FORM_MM = 8.0, 3.4
FORM_GAP_MM = 7.5
"""Around the line for machine, name and date."""
MACHINE_SHARE, LABEL_MM = 0.44, 16.0
"""The machine's part of that line, and what its label takes of it."""
RULE_MM = 2.5
"""The rule above the foot, with the gaps around it."""
COUNT_MM = 48.0
"""The room for `sheet 1 of 4 · page 12`."""


@dataclass(frozen=True)
class Said:
    """What a set of sheets says on each of them."""

    title: str
    below: str
    """The symptom, or what else stands below the title."""
    machine: str
    """What is filled in for the machine; empty for a line to write on."""
    imprint: tuple[str, ...]
    """Build date and revisions."""
    deferral: tuple[str, ...]


@dataclass(frozen=True)
class Frame:
    """The same on one kind of paper."""

    said: Said
    paper: Paper

    @property
    def head_mm(self) -> float:
        """The height of the head."""
        text = len(self._title) * TITLE_MM + len(self._below) * BELOW_MM
        return text + FORM_GAP_MM + self._form_mm

    @property
    def foot_mm(self) -> float:
        """The height of the foot."""
        return (len(self._imprint) + len(self._deferral)) * FOOT_MM + RULE_MM

    @property
    def body_mm(self) -> tuple[float, float]:
        """Width and height of what is between head and foot."""
        taken = self.head_mm + self.foot_mm
        return self.paper.inner_width_mm, self.paper.inner_height_mm - taken

    def data(self) -> Mapping[str, Any]:
        """Return what the template prints."""
        return {
            "paper": vars(self.paper),
            "title": self.said.title,
            "title_lines": self._title,
            "below_lines": self._below,
            "machine": self.said.machine,
            "machine_lines": self._machine,
            "form_mm": self._form_mm,
            "imprint_lines": self._imprint,
            "deferral_lines": self._deferral,
            "head_mm": self.head_mm,
            "foot_mm": self.foot_mm,
        }

    @property
    def _title(self) -> tuple[str, ...]:
        return break_lines(self.said.title, self.paper.inner_width_mm, TITLE_PT, "bold")

    @property
    def _below(self) -> tuple[str, ...]:
        return break_lines(self.said.below, self.paper.inner_width_mm, BELOW_PT)

    @property
    def _machine(self) -> tuple[str, ...]:
        width = self.paper.inner_width_mm * MACHINE_SHARE - LABEL_MM
        return break_lines(self.said.machine, width, FORM_PT)

    @property
    def _form_mm(self) -> float:
        return max(1, len(self._machine)) * FORM_MM

    @property
    def _imprint(self) -> tuple[str, ...]:
        width = self.paper.inner_width_mm - COUNT_MM
        return break_lines(" · ".join(self.said.imprint), width, FOOT_PT)

    @property
    def _deferral(self) -> tuple[str, ...]:
        return break_lines(" ".join(self.said.deferral), self.paper.inner_width_mm, FOOT_PT)
