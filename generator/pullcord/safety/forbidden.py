"""What must never come together: the conflicts behind the safety rules, by rule."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from pullcord.safety.conflicts import Conflict


def _any_of(*conditions: str) -> frozenset[str]:
    return frozenset(conditions)


_FUEL = _any_of("petrol-open", "vapour")
_HOLE = _any_of("plug-hole-open")
_LIGHTS = _any_of("flame", "hot-work", "spark")
_UNKNOWN_HEAT = _any_of("heat-unknown")

FORBIDDEN: Mapping[str, tuple[Conflict, ...]] = MappingProxyType(
    {
        "ignition-near-petrol": (
            Conflict(_any_of("flame", "hot-work"), (_FUEL | {"near-petrol", "auxiliary-tank"},)),
            Conflict(_any_of("spark", "running", "battery-spark"), (_FUEL,)),
            # A starter motor and its switch spark, and so does the plug.
            Conflict(_any_of("cranking"), (_FUEL, _any_of("ignition-live", "battery-connected"))),
            Conflict(_any_of("petrol-open"), (_any_of("engine-running"),)),
        ),
        "petrol-near-hot-engine": (
            Conflict(_any_of("petrol-open"), (_any_of("hot-parts"),)),
            # A machine that arrives dripping is found so: its first step can only let it cool.
            Conflict(_any_of("petrol-open"), (_UNKNOWN_HEAT,), excused=_UNKNOWN_HEAT),
        ),
        "runs-without-air": (Conflict(_any_of("running"), (_any_of("no-fresh-air"),)),),
        "runs-without-stop": (Conflict(_any_of("running"), (_any_of("no-way-to-stop"),)),),
        "sparks-at-open-plug-hole": (
            Conflict(_any_of("spark"), (_HOLE,)),
            Conflict(_any_of("cranking"), (_HOLE, _any_of("ignition-live"))),
        ),
        "under-unsupported": (Conflict(_any_of("works-under"), (_any_of("unsupported"),)),),
        "near-moving-machine": (
            Conflict(_any_of("guard-off"), (_any_of("engine-running"),)),
            Conflict(
                _any_of("works-under"),
                (_any_of("engine-running", "running", "cranking", "moving-drive"),),
            ),
        ),
        "flame-near-charging": (
            Conflict(_LIGHTS, (_any_of("charging"),)),
            Conflict(_any_of("charging"), (_LIGHTS,)),
        ),
    }
)
"""A rule's conflicts are asked in this order, and the first that is met is reported."""
