"""What a step can do to the machine and the room, and what is so afterwards.

A condition is something that may be so: petrol is open, the engine is running. Most last until
something puts them right; some are over when the step is over. Every verb a procedure may write
has one row in `ROWS`, and the rows are the whole meaning of the verbs.

A machine's history is unknown, so a procedure begins with the careful assumption: the engine may be
hot, the ignition can spark, a battery is connected, nobody has seen to fresh air, to a way to stop
the engine or to supports (`AT_START`).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

State = frozenset[str]
"""The conditions that hold, or may hold, at one moment."""


@dataclass(frozen=True)
class Condition:
    """Something that may be so at a machine."""

    id: str
    says: str
    """The words a finding uses, such as `petrol is open`."""
    lasts: bool = True
    """Whether it outlives the step that brings it about."""
    at_start: bool = False
    """Whether it is taken to be so before the first step."""
    loose_end: bool = False
    """Whether a procedure may not end with it."""
    reminds: bool = False
    """Whether someone who walks away with it must be told."""
    may_be_found: bool = True
    """Whether a machine may well arrive with it, so that putting it right first is no mistake."""
    put_right_by: str = ""
    """The key and value that end it, such as `closes: petrol`."""


@dataclass(frozen=True)
class Row:
    """What one verb does to one thing."""

    verb: str
    """The key in the file, such as `takes-off`."""
    thing: str
    begins: tuple[str, ...] = ()
    """Conditions that hold from here on."""
    ends: tuple[str, ...] = ()
    """Conditions that no longer hold when the step is over; they count while it lasts."""
    meets: tuple[str, ...] = ()
    """Conditions that hold during the step, whatever came before."""


def _loose_end(id_: str, says: str, put_right_by: str, *, found: bool = False) -> Condition:
    return Condition(
        id_,
        says,
        loose_end=True,
        reminds=True,
        may_be_found=found,
        put_right_by=put_right_by,
    )


def _assumed(id_: str, says: str, put_right_by: str) -> Condition:
    return Condition(id_, says, at_start=True, put_right_by=put_right_by)


def _happening(id_: str, says: str) -> Condition:
    return Condition(id_, says, lasts=False)


_ALL = (
    # Loose ends, in the order in which someone who walks away should see to them.
    _loose_end("engine-running", "the engine is running", "stops: engine"),
    _loose_end("charging", "the battery is on the charger", "disconnects: charger"),
    _loose_end("tank-pressure", "the tank is under pressure", "releases: tank", found=True),
    _loose_end(
        "cylinder-pressure", "the cylinder is under pressure", "releases: cylinder", found=True
    ),
    _loose_end("petrol-open", "petrol is open", "closes: petrol"),
    _loose_end("vapour", "petrol vapour is in the room", "clears: vapour", found=True),
    _loose_end("auxiliary-tank", "the auxiliary tank is fitted", "takes-off: auxiliary-tank"),
    _loose_end("test-lead", "a test lead is fitted", "takes-off: test-lead"),
    _loose_end("bypass", "a bypass is fitted", "takes-off: bypass", found=True),
    _loose_end("borrowed-part", "a borrowed part is fitted", "takes-off: borrowed-part"),
    _loose_end("plug-hole-open", "the plug hole is open", "closes: plug-hole"),
    _loose_end("guard-off", "a guard is off", "closes: guard"),
    _loose_end("machine-raised", "the machine is raised", "lowers: machine"),
    # A tyre and a starter spring hold their pressure or wind when all is well.
    Condition("tyre-pressure", "a tyre is under pressure", reminds=True),
    Condition("spring-wound", "a spring is wound up", reminds=True),
    Condition("hot-parts", "the engine may be hot", reminds=True, put_right_by="cools: engine"),
    Condition(
        "ignition-off", "the ignition is disabled", reminds=True, may_be_found=False,
        put_right_by="enables: ignition",
    ),
    # Taken to be so at a machine of unknown history.
    _assumed("heat-unknown", "nobody has made sure that the engine is cold", "cools: engine"),
    _assumed("ignition-live", "the ignition can spark", "disables: ignition"),
    _assumed("battery-connected", "a battery may be connected", "disconnects: battery"),
    _assumed("no-fresh-air", "no fresh air has been arranged", "arranges: fresh-air"),
    _assumed("no-way-to-stop", "no way to stop it has been arranged", "arranges: way-to-stop"),
    _assumed("unsupported", "nothing has been put under the machine", "supports: machine"),
    # Over when the step is over.
    _happening("spark", "a spark is made"),
    _happening("battery-spark", "a battery connection may spark"),
    _happening("cranking", "the engine is cranked"),
    _happening("running", "the engine runs"),
    _happening("flame", "there is a flame"),
    _happening("hot-work", "there is hot work"),
    _happening("moving-drive", "the drive moves"),
    _happening("works-under", "someone is under the machine"),
    _happening("fitting-test-lead", "a test lead is put on"),
    _happening("fitting-borrowed-part", "a borrowed part is put on"),
    _happening("near-petrol", "hands are near petrol"),
    _happening("near-high-voltage", "hands are near high voltage"),
    _happening("near-hot-parts", "hands are near hot parts"),
    _happening("near-moving-parts", "hands are near moving parts"),
    _happening("near-battery", "hands are near a battery"),
    _happening("near-raised-machine", "someone is beside a raised machine"),
    _happening("near-pressure", "hands are near stored pressure"),
)  # fmt: skip

CONDITIONS: Mapping[str, Condition] = MappingProxyType({each.id: each for each in _ALL})
"""Every condition by its identifier."""

AT_START: State = frozenset(each.id for each in _ALL if each.at_start)
"""What is taken to be so before the first step."""

ROWS: tuple[Row, ...] = (
    # Within one step the rows work in this order, whatever order the author wrote: what makes safe
    # at the beginning of a job, then what is done, then what is put right, then what is made live.
    Row("disables", "ignition", begins=("ignition-off",), ends=("ignition-live",),
        meets=("near-high-voltage",)),
    Row("disconnects", "battery", ends=("battery-connected",),
        meets=("battery-spark", "near-battery")),
    Row("arranges", "fresh-air", ends=("no-fresh-air",)),
    Row("arranges", "way-to-stop", ends=("no-way-to-stop",)),
    Row("connects", "charger", begins=("charging",), meets=("battery-spark", "near-battery")),
    Row("raises", "machine", begins=("machine-raised", "unsupported")),
    Row("supports", "machine", ends=("unsupported",), meets=("near-raised-machine",)),
    Row("opens", "petrol", begins=("petrol-open",)),
    Row("opens", "plug-hole", begins=("plug-hole-open",)),
    Row("opens", "guard", begins=("guard-off",)),
    Row("fits", "test-lead", begins=("test-lead",), meets=("fitting-test-lead",)),
    Row("fits", "bypass", begins=("bypass",)),
    Row("fits", "borrowed-part", begins=("borrowed-part",), meets=("fitting-borrowed-part",)),
    Row("fits", "auxiliary-tank", begins=("auxiliary-tank", "vapour"), meets=("petrol-open",)),
    Row("pressurises", "tank", begins=("tank-pressure",)),
    Row("pressurises", "tyre", begins=("tyre-pressure",)),
    Row("pressurises", "cylinder", begins=("cylinder-pressure",)),
    Row("pressurises", "spring", begins=("spring-wound",)),
    Row("makes", "spark", meets=("spark",)),
    Row("makes", "cranking", meets=("cranking",)),
    Row("makes", "running", begins=("hot-parts",), meets=("running", "engine-running")),
    Row("makes", "flame", meets=("flame",)),
    Row("makes", "hot-work", begins=("hot-parts",), meets=("hot-work",)),
    Row("makes", "moving-drive", meets=("moving-drive",)),
    Row("starts", "engine", begins=("engine-running", "hot-parts"), meets=("running",)),
    Row("works-under", "machine", meets=("works-under",)),
    Row("near", "petrol", meets=("near-petrol",)),
    Row("near", "high-voltage", meets=("near-high-voltage",)),
    Row("near", "hot-parts", meets=("near-hot-parts",)),
    Row("near", "moving-parts", meets=("near-moving-parts",)),
    Row("near", "battery", meets=("near-battery",)),
    Row("near", "raised-machine", meets=("near-raised-machine",)),
    Row("near", "pressure", meets=("near-pressure",)),
    Row("stops", "engine", ends=("engine-running",)),
    Row("releases", "tank", ends=("tank-pressure",)),
    Row("releases", "tyre", ends=("tyre-pressure",)),
    Row("releases", "cylinder", ends=("cylinder-pressure",)),
    Row("releases", "spring", ends=("spring-wound",)),
    Row("lowers", "machine", begins=("unsupported",), ends=("machine-raised",)),
    Row("takes-off", "test-lead", ends=("test-lead",)),
    Row("takes-off", "bypass", ends=("bypass",)),
    Row("takes-off", "borrowed-part", ends=("borrowed-part",)),
    Row("takes-off", "auxiliary-tank", begins=("vapour",), ends=("auxiliary-tank",),
        meets=("petrol-open",)),
    # Open petrol gives off vapour until it is closed; what it gave off stays until it is cleared.
    Row("closes", "petrol", begins=("vapour",), ends=("petrol-open",)),
    Row("closes", "plug-hole", ends=("plug-hole-open",)),
    Row("closes", "guard", ends=("guard-off",)),
    Row("disconnects", "charger", ends=("charging",), meets=("battery-spark", "near-battery")),
    Row("clears", "vapour", ends=("vapour",)),
    Row("cools", "engine", ends=("hot-parts", "heat-unknown")),
    Row("connects", "battery", begins=("battery-connected",),
        meets=("battery-spark", "near-battery")),
    Row("enables", "ignition", begins=("ignition-live",), ends=("ignition-off",),
        meets=("near-high-voltage",)),
)  # fmt: skip
"""What every verb does to every thing it may be written with."""


def says(conditions: State) -> str:
    """Return the words for several conditions, in the vocabulary's order: `a and b`."""
    words = [each.says for each in _ALL if each.id in conditions]
    return " and ".join(words)
