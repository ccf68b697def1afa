"""The shop's meter as a project's settings give it, with all that is wrong with it."""

from __future__ import annotations

from pullcord.finding import Flaw
from pullcord.model.meter import MeterSheet
from pullcord.model.parse import parse_record
from pullcord.readings.meter import meter_faults
from pullcord.rules.machine import unreadable_figure


def parse_meter_sheet(data: object) -> MeterSheet | tuple[Flaw, ...]:
    """Return the meter that plain data describes, or what is wrong with it, each with its rule.

    Every scalar of the data is text. Never raises.
    """
    sheet = parse_record(MeterSheet, data)
    if isinstance(sheet, tuple):
        return sheet
    faults = tuple(
        Flaw(place, str(error), error.mend, unreadable_figure.ID)
        for place, error in meter_faults(sheet)
    )
    return faults or sheet
