"""What changed about the cautions: hazards that came or went, and graver or milder words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pullcord.analysis.diff.change import Change, Part, changed, changed_each, listed_words
from pullcord.analysis.diff.renames import Renames, new_node
from pullcord.safety.box import Box
from pullcord.safety.notes import SafetyNotes

_CAUTIONS = Part.CAUTIONS


def compare_cautions(old: SafetyNotes, new: SafetyNotes, renames: Renames) -> Iterator[Change]:
    """Yield every change of the boxes before a step or remedy, and of what is got ready."""
    was = {new_node(node, renames): boxes for node, boxes in old.boxes.items()}
    for node, boxes in new.boxes.items():
        yield from changed_each(
            _CAUTIONS, node, "hazard", _hazards(was.get(node, ())), _hazards(boxes)
        )
    left = {new_node(node, renames): items for node, items in old.walk_away.items()}
    for node, items in new.walk_away.items():
        if node in left:
            yield from changed(
                _CAUTIONS, node, "walk-away", listed_words(left[node]), listed_words(items)
            )
    for what in ("wear", "ready"):
        before, after = (
            dict.fromkeys(getattr(notes.before_start, what), "needed") for notes in (old, new)
        )
        yield from changed_each(_CAUTIONS, "", what, before, after)


def _hazards(boxes: tuple[Box, ...]) -> Mapping[str, str]:
    """Return each hazard with the signal word it stands under."""
    return {hazard: box.signal.name for box in boxes for hazard in box.hazards}
