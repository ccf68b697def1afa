"""What a step or a remedy does to the machine and to the room it stands in.

Each verb is a key in the file and takes one thing or a list. What the verbs mean for safety is
decided in `pullcord.safety`; here is only what may be written.
"""

from __future__ import annotations

from typing import Literal

from pullcord.model.base import Many, Record

Openable = Literal["petrol", "plug-hole", "guard"]
Happening = Literal["spark", "cranking", "running", "flame", "hot-work", "moving-drive"]
Fitting = Literal["test-lead", "bypass", "borrowed-part", "auxiliary-tank"]
Vessel = Literal["tank", "tyre", "cylinder", "spring"]
Supply = Literal["battery", "charger"]
Nearness = Literal[
    "petrol", "high-voltage", "hot-parts", "moving-parts", "battery", "raised-machine", "pressure"
]


class Action(Record):
    """The effects a step or a remedy may declare."""

    opens: Many[Openable] = ()
    """What is open to the air or exposed from here on, until a later step closes it."""
    closes: Many[Openable] = ()
    """What is shut, refitted or wiped up again."""
    makes: Many[Happening] = ()
    """What happens during this step and is over at its end."""
    starts: Many[Literal["engine"]] = ()
    """The engine is left running when the step ends."""
    stops: Many[Literal["engine"]] = ()
    """The engine is stopped."""
    fits: Many[Fitting] = ()
    """What is put on for testing and must come off again."""
    takes_off: Many[Fitting] = ()
    """What was fitted for testing and now comes off."""
    raises: Many[Literal["machine"]] = ()
    """The machine is lifted or tipped."""
    lowers: Many[Literal["machine"]] = ()
    """The machine is set down on the floor again."""
    supports: Many[Literal["machine"]] = ()
    """Stands or blocks are put under the raised machine."""
    works_under: Many[Literal["machine"]] = ()
    """Hands or head go under the raised machine."""
    pressurises: Many[Vessel] = ()
    """What is put under pressure or wound up."""
    releases: Many[Vessel] = ()
    """What has its pressure or wind let out."""
    connects: Many[Supply] = ()
    """What is connected."""
    disconnects: Many[Supply] = ()
    """What is disconnected."""
    disables: Many[Literal["ignition"]] = ()
    """The ignition cannot spark from here on: plug lead off and grounded."""
    enables: Many[Literal["ignition"]] = ()
    """The ignition can spark again."""
    arranges: Many[Literal["fresh-air", "way-to-stop"]] = ()
    """What is made ready before an engine runs."""
    clears: Many[Literal["vapour"]] = ()
    """Spills wiped up, rags outside, doors open, time waited until the smell is gone."""
    cools: Many[Literal["engine"]] = ()
    """Time is given until the engine can be touched."""
    near: Many[Nearness] = ()
    """What the hands come close to without opening or making it."""
