"""What a person with a cheap meter should keep in mind at a reading. Common practice throughout."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import ROUND_CEILING, Decimal

from pullcord.readings.amount import amount_text
from pullcord.readings.bands import guard_words, range_for
from pullcord.readings.limits import Limits
from pullcord.readings.meter import Meter
from pullcord.readings.unit import UNITS

COARSE_SHARE = 0.1
"""From this share of the limit on, what the meter leaves in doubt is worth a sentence."""

OVER_RANGE = (
    "OL, or a lone 1 at the left, means over-range. Turn the dial to the next higher range, and "
    "call it open only when the highest range says so too."
)
BITE = (
    "Corroded pins read high until the probe bites: press, twist, scrape, read again, and go by "
    "the lowest steady reading."
)


def lead_check_words(meter: Meter) -> str:
    """Return the reminder to read the leads alone first."""
    leads = amount_text(meter.leads_ohm, UNITS["ohm"])
    return (
        "Hold the two probes together first and note what the meter shows (about "
        f"{leads} is usual). Take that off every reading before you judge it."
    )


def dial_words(limits: Limits, meter: Meter) -> str:
    """Return the dial position to use, such as `2 kohm`; "" without a meter for the quantity."""
    ranges = meter.ranges_for(limits.quantity)
    if not ranges:
        return ""
    edge = highest_edge(limits)
    return ranges[-1].dial if edge is None else range_for(ranges, edge).dial


def highest_edge(limits: Limits) -> Decimal | None:
    """Return the largest number the limits name, in base units; None when they only say open."""
    edges = (limits.interval.start.value, limits.interval.end.value)
    return max((edge for edge in edges if edge.is_finite()), default=None)


def meter_notes(limits: Limits, meter: Meter) -> Iterator[str]:
    """Yield what to keep in mind, most needed first; nothing for what no meter measures."""
    ranges = meter.ranges_for(limits.quantity)
    if limits.quantity != "resistance" or not ranges:
        return
    edge = highest_edge(limits)
    if edge is not None and edge < ranges[0].full:
        yield lead_check_words(meter)
        if note := coarse_words(limits, meter):
            yield note
        yield BITE
    yield OVER_RANGE


def coarse_words(limits: Limits, meter: Meter) -> str:
    """Return what the meter cannot tell near the limits; "" when it is fine enough for them."""
    ranges, edge = meter.ranges_for(limits.quantity), highest_edge(limits)
    if not ranges or not edge:
        return ""
    one = range_for(ranges, edge)
    guard = one.guard(float(edge))
    if guard < COARSE_SHARE * float(edge):
        return ""
    near = amount_text(limits.unit.from_base(edge), limits.unit)
    least = max(edge - _steps(guard, one.step), Decimal(0))
    low = amount_text(limits.unit.from_base(least), limits.unit)
    off = guard_words(one, edge, limits.unit)
    return (
        f"Near {near} this meter may be off by {off} either way, so it cannot tell {low} from "
        f"{near}. It finds a break or a bad contact, which reads well "
        "above; a few shorted turns it does not find."
    )


def _steps(guard: float, step: Decimal) -> Decimal:
    """Return the guard as a whole number of displayed steps, rounded up."""
    return (Decimal(repr(guard)) / step).to_integral_value(ROUND_CEILING) * step
