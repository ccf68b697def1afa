"""Which hazards the conditions call up, and what each hazard asks for.

The signal words follow the definitions of ANSI Z535.4 (DANGER: will, WARNING: could result in death
or serious injury; CAUTION: could result in minor or moderate injury; NOTICE: no injury). They stand
here and not beside the texts, so that a project that words a caution anew cannot soften its word.
Which word a hazard gets is common practice, the graver one where opinions differ.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from pullcord.safety.box import SignalWord
from pullcord.safety.vocabulary import State

DANGER, WARNING = SignalWord.DANGER, SignalWord.WARNING
CAUTION, NOTICE = SignalWord.CAUTION, SignalWord.NOTICE


@dataclass(frozen=True)
class Hazard:
    """Something that can hurt a person, or be forgotten."""

    id: str
    signal: SignalWord
    family: str
    """Hazards of one family share a box: they are of one kind and avoided in one way."""
    sign: str
    """The drawing that stands for it."""
    covers: tuple[str, ...] = ()
    """Hazards whose texts say nothing that this one's does not."""
    wear: tuple[str, ...] = ()
    """Protective equipment it calls for."""
    ready: tuple[str, ...] = ()
    """What must be in place before the first step."""


@dataclass(frozen=True)
class Call:
    """Conditions that, together, call up hazards."""

    all_of: State
    hazards: tuple[str, ...]


_FIRE = ("extinguisher", "fresh-air", "no-flames")

_ALL = (
    # Gravest first; the order decides what a box speaks of first.
    Hazard("carbon-monoxide", DANGER, "exhaust", "exhaust", ready=("fresh-air", "gas-alarm")),
    Hazard("open-petrol", DANGER, "fire", "flame",
           covers=("petrol-vapour", "petrol-near"),
           wear=("eyes", "petrol-gloves"), ready=(*_FIRE, "petrol-can", "rags-outside")),
    Hazard("flame-or-hot-work", DANGER, "fire", "flame",
           wear=("eyes", "work-gloves"), ready=(*_FIRE, "petrol-away", "fire-watch")),
    Hazard("under-machine", DANGER, "crushing", "crushing",
           covers=("machine-raised",), ready=("stands", "second-person")),
    Hazard("guard-off", DANGER, "moving", "moving",
           covers=("moving-parts",), wear=("close-clothes",), ready=("way-to-stop",)),
    Hazard("petrol-vapour", WARNING, "fire", "flame", covers=("petrol-near",),
           wear=("eyes",), ready=(*_FIRE, "rags-outside")),
    Hazard("petrol-near", WARNING, "fire", "flame",
           wear=("eyes", "petrol-gloves"), ready=_FIRE),
    Hazard("plug-hole-spray", WARNING, "fire", "flame", wear=("eyes",), ready=_FIRE),
    Hazard("high-voltage", WARNING, "electricity", "electricity", ready=("heart-device",)),
    Hazard("moving-parts", WARNING, "moving", "moving",
           wear=("close-clothes", "eyes"), ready=("way-to-stop",)),
    Hazard("cranking", WARNING, "moving", "moving", wear=("close-clothes",)),
    Hazard("bypassed", WARNING, "moving", "moving", ready=("way-to-stop",)),
    Hazard("machine-raised", WARNING, "crushing", "crushing",
           wear=("shoes",), ready=("stands",)),
    Hazard("tyre-pressure", WARNING, "pressure", "pressure",
           covers=("stored-pressure",), wear=("eyes", "ears")),
    Hazard("tank-pressure", WARNING, "pressure", "pressure",
           covers=("stored-pressure",), wear=("eyes", "petrol-gloves"), ready=_FIRE),
    Hazard("cylinder-pressure", WARNING, "pressure", "pressure",
           covers=("stored-pressure",), wear=("eyes", "close-clothes")),
    Hazard("wound-spring", WARNING, "pressure", "pressure",
           covers=("stored-pressure",), wear=("eyes", "work-gloves")),
    Hazard("stored-pressure", WARNING, "pressure", "pressure", wear=("eyes",)),
    Hazard("charging", WARNING, "battery", "battery", covers=("battery",),
           wear=("eyes", "acid-gloves"), ready=("fresh-air", "no-flames")),
    Hazard("battery", WARNING, "battery", "battery",
           wear=("eyes", "acid-gloves"), ready=("no-flames",)),
    Hazard("hot-parts", WARNING, "heat", "heat", wear=("work-gloves",)),
    Hazard("test-lead", CAUTION, "left-on", "lead"),
    Hazard("borrowed-part", NOTICE, "left-on", "tag"),
)  # fmt: skip

HAZARDS: Mapping[str, Hazard] = MappingProxyType({each.id: each for each in _ALL})
"""Every hazard by its identifier, gravest first."""

_RUNNING = ("carbon-monoxide", "moving-parts", "high-voltage", "hot-parts")
_MOTION = ("cranking", "running", "engine-running", "moving-drive")


def _call(*conditions: str, hazards: tuple[str, ...]) -> Call:
    return Call(frozenset(conditions), hazards)


CALLS: tuple[Call, ...] = (
    _call("petrol-open", hazards=("open-petrol",)),
    _call("vapour", hazards=("petrol-vapour",)),
    _call("near-petrol", hazards=("petrol-near",)),
    _call("auxiliary-tank", hazards=("petrol-near",)),
    _call("running", hazards=_RUNNING),
    _call("engine-running", hazards=_RUNNING),
    _call("flame", hazards=("flame-or-hot-work",)),
    _call("hot-work", hazards=("flame-or-hot-work",)),
    # A spark that is made on purpose lights petrol nobody knows of.
    _call("spark", hazards=("high-voltage", "petrol-near")),
    _call("near-high-voltage", hazards=("high-voltage",)),
    _call("cranking", hazards=("cranking", "moving-parts")),
    _call("cranking", "ignition-live", hazards=("high-voltage",)),
    _call("cranking", "plug-hole-open", hazards=("plug-hole-spray",)),
    _call("moving-drive", hazards=("moving-parts",)),
    _call("near-moving-parts", hazards=("moving-parts",)),
    *(_call("guard-off", motion, hazards=("guard-off",)) for motion in _MOTION),
    _call("bypass", hazards=("bypassed",)),
    _call("works-under", hazards=("under-machine",)),
    _call("machine-raised", hazards=("machine-raised",)),
    _call("near-raised-machine", hazards=("machine-raised",)),
    _call("tyre-pressure", hazards=("tyre-pressure",)),
    _call("tank-pressure", hazards=("tank-pressure",)),
    _call("cylinder-pressure", hazards=("cylinder-pressure",)),
    _call("spring-wound", hazards=("wound-spring",)),
    _call("near-pressure", hazards=("stored-pressure",)),
    _call("charging", hazards=("charging",)),
    _call("battery-spark", hazards=("battery",)),
    _call("near-battery", hazards=("battery",)),
    _call("hot-parts", hazards=("hot-parts",)),
    _call("near-hot-parts", hazards=("hot-parts",)),
    _call("fitting-test-lead", hazards=("test-lead",)),
    _call("fitting-borrowed-part", hazards=("borrowed-part",)),
)
"""What calls up what. A condition that stands in no row here hurts nobody by itself."""


def hazards_of(conditions: State) -> tuple[Hazard, ...]:
    """Return the hazards the conditions call up, gravest first, covered ones left in."""
    called = {hazard for call in CALLS if call.all_of <= conditions for hazard in call.hazards}
    return tuple(hazard for hazard in _ALL if hazard.id in called)


def without_covered(hazards: tuple[Hazard, ...]) -> tuple[Hazard, ...]:
    """Leave out the hazards whose every word another one says as well."""
    covered = {name for hazard in hazards for name in hazard.covers}
    return tuple(hazard for hazard in hazards if hazard.id not in covered)
