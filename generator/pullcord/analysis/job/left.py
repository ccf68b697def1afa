"""How the machine was left: what is fitted, open, off and drained, and what to see to first."""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.analysis.job.given import Given
from pullcord.analysis.job.report import LeftState
from pullcord.analysis.job.state import PETROL, Standing, last_standing
from pullcord.safety.vocabulary import CONDITIONS, State

OFF = {
    "battery-connected": "battery",
    "ignition-live": "ignition",
}
"""What is off while a condition of the start no longer holds."""
OPEN = {"petrol-open": "petrol", "plug-hole-open": "plug-hole", "guard-off": "guard"}
"""What is open while a condition holds."""

BEFORE = {
    "engine-running": "The log left the engine running: make sure that it stands still.",
    "charging": "The log left the battery on the charger: switch it off at the wall first.",
    "tank-pressure": "The tank was left under pressure: let it out slowly, a rag over the cap.",
    "cylinder-pressure": "The cylinder was left under pressure: let the air out first.",
    "petrol-open": (
        "Petrol was left open: no flame, no switch, no spark; open the doors, then close it and "
        "wipe up."
    ),
    "vapour": (
        "Petrol vapour may be in the room: open the doors and wait until the smell is gone before "
        "anything is switched on."
    ),
    "auxiliary-tank": "The auxiliary tank is still fitted: shut it off and take it off.",
    "test-lead": "A test lead is still fitted.",
    "bypass": "A bypass is still fitted: a switch that should stop it may not do so.",
    "borrowed-part": "A borrowed part is still fitted.",
    "plug-hole-open": "The plug hole was left open: look into it before anything turns.",
    "guard-off": "A guard is off: keep hands and sleeves away from what it covered.",
    "machine-raised": "It was left raised: look that it stands firm before you go near.",
    "tyre-pressure": "A tyre was left under pressure: check it against its own figure first.",
    "spring-wound": "A spring was left wound up: keep clear of it until its wind is out.",
    "hot-parts": "It was warm when it was left: make sure that it is cold.",
    "ignition-off": (
        "Look that the plug cap is off and tied away, and leave it so until a step says otherwise."
    ),
}
"""What to see to, for every condition someone must be told of."""

OUT = {
    "brake-fluid": "The brake fluid is out: its brakes do not hold.",
    "oil": "The oil is out: fill it before anything turns.",
    "coolant": "The coolant is out: fill it before it runs.",
}
PETROL_IN = "There is petrol in it: drain it before you work on it, and before you leave it again."
PETROL_UNKNOWN = "Nobody wrote that its petrol is out: take it that there is some in it."


def read_left(given: Given) -> LeftState:
    """Return how the machine stands after the last entry.

    A drained tank is the state to leave it in between evenings (common practice).
    """
    standing = last_standing(given)
    held = _held(standing.state)
    is_loose = any(CONDITIONS[each].loose_end for each in held)
    return LeftState(
        conditions=held,
        fitted=standing.fitted,
        drained=tuple(sorted(standing.drained)),
        off=tuple(_off(standing.state)),
        is_safe=not is_loose and PETROL in standing.drained,
        before_touching=tuple(_before(given, standing)),
    )


def _held(state: State) -> tuple[str, ...]:
    return tuple(each.id for each in CONDITIONS.values() if each.reminds and each.id in state)


def _off(state: State) -> Iterator[str]:
    yield from (thing for condition, thing in OFF.items() if condition not in state)
    yield from (thing for condition, thing in OPEN.items() if condition in state)


def _before(given: Given, standing: Standing) -> Iterator[str]:
    held = _held(standing.state)
    for condition in held:
        if CONDITIONS[condition].loose_end:
            yield _since(given, standing, condition)
    if PETROL not in standing.drained:
        yield PETROL_IN if PETROL in standing.filled else PETROL_UNKNOWN
    yield from (words for liquid, words in OUT.items() if liquid in standing.drained)
    for condition in held:
        if not CONDITIONS[condition].loose_end:
            yield _since(given, standing, condition)


def _since(given: Given, standing: Standing, condition: str) -> str:
    place = standing.since.get(condition)
    if place is None:
        return BEFORE[condition]
    return f"{BEFORE[condition]} (Since {given.notes[place].day}.)"
