"""Quantities, limits, meters and the formulas of the bench. Pure: figures in, figures out."""

from __future__ import annotations

from pullcord.readings.amount import Amount, parse_amount
from pullcord.readings.answers import Share, check_cover, shares_of
from pullcord.readings.bands import Band, bands_of, judge, untold
from pullcord.readings.both import amount_both, limits_both
from pullcord.readings.derived import Derived, derived_from
from pullcord.readings.fits import is_fitting
from pullcord.readings.limits import Limits, parse_limits
from pullcord.readings.meter import Meter, meter_faults, parse_meter
from pullcord.readings.pins import ConnectorView, connector_views
from pullcord.readings.resolve import Resolved, for_machine
from pullcord.readings.sheet import NOT_KNOWN, find_pin, place_words
from pullcord.readings.tables import Table, bench_tables
from pullcord.readings.unit import ReadingError

__all__ = [
    "NOT_KNOWN",
    "Amount",
    "Band",
    "ConnectorView",
    "Derived",
    "Limits",
    "Meter",
    "ReadingError",
    "Resolved",
    "Share",
    "Table",
    "amount_both",
    "bands_of",
    "bench_tables",
    "check_cover",
    "connector_views",
    "derived_from",
    "find_pin",
    "for_machine",
    "is_fitting",
    "judge",
    "limits_both",
    "meter_faults",
    "parse_amount",
    "parse_limits",
    "parse_meter",
    "place_words",
    "shares_of",
    "untold",
]
