"""Which procedures apply to which machine."""

from __future__ import annotations

import pytest

from pullcord.model.machine import Machine
from pullcord.model.procedure import Cause, Fits, Procedure, Step
from pullcord.readings.fits import is_fitting


def procedure(fits: Fits) -> Procedure:
    """Return the smallest procedure that fits so."""
    return Procedure(
        procedure="no-spark", title="No spark", symptom="No spark.", about="All.", fits=fits,
        start="look", causes={"plug": Cause(title="Plug", remedy="Fit a new one.")},
        steps={"look": Step(title="Look", do="Look.")},
    )  # fmt: skip


BIKE = Machine(
    machine="old-bike", title="Old bike", kind="farm-bike", ignition="capacitor-discharge",
    fuel="carburettor", strokes="four",
)  # fmt: skip
UNKNOWN = Machine(machine="found-engine", title="Found engine", kind="pump")


@pytest.mark.parametrize(
    ("fits", "machine", "is_fit"),
    [
        (Fits(), BIKE, True),
        (Fits(ignition=["magneto", "capacitor-discharge"]), BIKE, True),
        (Fits(ignition=["points"]), BIKE, False),
        (Fits(ignition=["any"]), BIKE, True),
        (Fits(kind=["pump"]), BIKE, False),
        (Fits(kind=["pump", "farm-bike"], strokes=["four"]), BIKE, True),
        (Fits(strokes=["two"]), BIKE, False),
        (Fits(fuel=["carburettor"]), BIKE, True),
        (Fits(ignition=["points"], strokes=["two"]), UNKNOWN, True),
        (Fits(kind=["tiller"]), UNKNOWN, False),
    ],
)
def test_fit(fits: Fits, machine: Machine, is_fit: bool) -> None:
    """Every named property must agree; what the sheet leaves out may be anything."""
    assert is_fitting(procedure(fits), machine) is is_fit
