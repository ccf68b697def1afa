"""A caution box: what stands before an instruction.

Signal words and their order are those of ANSI Z535.6 / ISO 3864-2.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum


class SignalWord(IntEnum):
    """How bad it gets; the larger value is the graver word."""

    NOTICE = 1
    CAUTION = 2
    WARNING = 3
    DANGER = 4


@dataclass(frozen=True)
class Box:
    """One caution box. Its words are looked up by hazard when it is rendered."""

    signal: SignalWord
    hazards: tuple[str, ...]
    """Identifiers of the hazards it speaks of, gravest first; several when merged."""
