"""Which procedures come before all others: those about a machine that is dangerous as it stands.

Nearly every procedure meets something dangerous on its way, and warns of it there. In a few the
danger is there before anybody does a thing: petrol drips, or the engine runs and will not stop.
Their first instruction says so: at a machine nobody has touched yet it already stands behind a box
of the gravest word, or has the hands come near what moves, hangs or is under pressure.
"""

from __future__ import annotations

from pullcord.model.procedure import Procedure
from pullcord.safety.box import SignalWord
from pullcord.safety.boxes import boxes_of
from pullcord.safety.effects import effects_of, exposure
from pullcord.safety.vocabulary import AT_START

ACTIVE = frozenset({"moving-parts", "raised-machine", "pressure"})
"""What is not near a machine that stands still, unless somebody or a fault brought it about."""


def is_urgent(procedure: Procedure) -> bool:
    """Say whether the machine is dangerous as it stands, by the procedure's first step."""
    if procedure.start not in procedure.steps:
        return False
    first_word = word_at_sight(procedure)
    return first_word == SignalWord.DANGER or not ACTIVE.isdisjoint(
        procedure.steps[procedure.start].near
    )


def word_at_sight(procedure: Procedure) -> SignalWord | None:
    """Return the gravest word before the first step, nothing having been done to the machine yet.

    The first step must be there.
    """
    effects = effects_of(procedure.steps[procedure.start])
    boxes = boxes_of(exposure(AT_START, effects))
    return max((box.signal for box in boxes), default=None)
