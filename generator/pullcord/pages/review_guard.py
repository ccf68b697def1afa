"""Asks the safety analysis before a quicker order is put into words."""

from __future__ import annotations

from pullcord.analysis.guard import Guard
from pullcord.model.procedure import Procedure
from pullcord.safety.order import read_safe_orders, steps_that_matter


def read_guard(procedure: Procedure) -> Guard:
    """Return what refuses every order of the procedure that the safety analysis refuses."""
    return Guard(read_safe_orders(procedure), steps_that_matter(procedure))
