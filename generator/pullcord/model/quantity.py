"""The kinds of thing an instrument can measure."""

from __future__ import annotations

from typing import Literal, get_args

Quantity = Literal[
    "resistance", "voltage", "current", "length", "pressure", "speed", "time", "volume",
    "temperature", "torque", "count", "ratio", "frequency", "capacitance",
]  # fmt: skip

QUANTITIES: tuple[Quantity, ...] = get_args(Quantity)
"""Every quantity, in the order the guide lists them."""
