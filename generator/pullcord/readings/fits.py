"""Which procedures apply to which machine."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pullcord.model.machine import Machine
    from pullcord.model.procedure import Procedure

ANY = "any"


def is_fitting(procedure: Procedure, machine: Machine) -> bool:
    """Say whether a procedure applies to a machine.

    What the sheet leaves out may be anything: the owner of an unknown machine sees every procedure
    that is not ruled out.
    """
    wanted = procedure.fits
    return all(
        _allows(allowed, own)
        for allowed, own in (
            (wanted.kind, machine.kind),
            (wanted.ignition, machine.ignition),
            (wanted.fuel, machine.fuel),
            (wanted.strokes, machine.strokes),
        )
    )


def _allows(allowed: Sequence[str], own: str | None) -> bool:
    return not allowed or own is None or ANY in allowed or own in allowed
