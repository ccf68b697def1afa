"""Caution boxes as they are printed: signal word, sign, hazard, consequence, how to avoid it.

Form and order are those of ANSI Z535.6: the signal word of the gravest hazard, the safety alert
symbol beside every word but NOTICE, then what threatens, what it does and how to avoid it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from pullcord.pages.kit import Kit
from pullcord.pages.texts import Caution
from pullcord.safety.box import Box, SignalWord
from pullcord.safety.hazards import HAZARDS


@dataclass(frozen=True)
class SignView:
    """A drawing with what it says."""

    id: str
    file: str
    means: str


@dataclass(frozen=True)
class BoxView:
    """One box, every word of it decided."""

    level: str
    """`danger`, `warning`, `caution` or `notice`: the panel's colour."""
    word: str
    """The signal word, as it is printed."""
    has_alert_symbol: bool
    """False for NOTICE, which speaks of no injury."""
    signs: tuple[SignView, ...]
    hazards: tuple[Caution, ...]


def box_views(kit: Kit, boxes: Iterable[Box]) -> tuple[BoxView, ...]:
    """Return the boxes as they are printed, gravest first. Raises KeyError for a mute hazard."""
    return tuple(_view(kit, box) for box in sorted(boxes, key=lambda box: -box.signal))


def sign_views(kit: Kit, names: Iterable[str]) -> tuple[SignView, ...]:
    """Return drawings as they are printed."""
    return tuple(
        SignView(f"pc-sign-{name}", f"signs/{name}.svg", kit.signs[name]) for name in names
    )


def _view(kit: Kit, box: Box) -> BoxView:
    level = box.signal.name.lower()
    drawn = dict.fromkeys(HAZARDS[hazard].sign for hazard in box.hazards)
    return BoxView(
        level=level,
        word=kit.words[f"signal_{level}"],
        has_alert_symbol=box.signal is not SignalWord.NOTICE,
        signs=sign_views(kit, drawn),
        hazards=tuple(kit.cautions[hazard] for hazard in box.hazards),
    )
