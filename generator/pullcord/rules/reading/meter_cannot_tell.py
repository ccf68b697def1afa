"""The shop's meter must be able to prove each answer.

A cheap meter may be a third of an ohm off on its lowest range. Asked whether a coil reads under
0.6 ohm, up to 1 ohm or more, it can never prove the middle one: the page would say "too close to
call" for all of it. Ask another question, widen the limits, or name a better meter in `mkdocs.yml`.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from pullcord.finding import Flaw
from pullcord.model.meter import MeterSheet
from pullcord.model.procedure import Library, Procedure
from pullcord.readings.asked import Asked, Held, asked_of, held_against
from pullcord.readings.bands import MOST_KEPT, Untold, bands_of, untold
from pullcord.readings.meter import Meter, meter_faults, parse_meter
from pullcord.rules.example import example
from pullcord.safety.flow import Same

ID = "meter-cannot-tell"

FAILING = example("""
steps:
  casing:
    title: Measure the coil
    do: Unplug the coil and measure across its thick winding.
    reading: {quantity: resistance, at: the coil's two pins}
    answers:
      under 0.6 ohm: cause dry-casing
      0.6-1 ohm: cause air-leak
      over 1 ohm: cause dry-casing
""")

MENDED = FAILING.replace("      under 0.6 ohm: cause dry-casing\n", "").replace("0.6-1", "up to 1")

_NO_SHEET = MeterSheet()


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every answer that no number on the shop's meter proves."""
    meter = _meter(Same((library.meter if library else _NO_SHEET,)))
    for asked in asked_of(procedure):
        for held in held_against(asked, procedure, library):
            for one in _untold(Same((held, meter))):
                yield _flaw(asked, held, meter, one)


@lru_cache(maxsize=4)  # A library has one meter.
def _meter(key: Same) -> Meter:
    (sheet,) = key.parts
    return parse_meter(_NO_SHEET if any(meter_faults(sheet)) else sheet)


@lru_cache(maxsize=MOST_KEPT)
def _untold(key: Same) -> tuple[Untold, ...]:
    held, meter = key.parts
    if any(fault.kind != "never" for fault in held.faults):
        return ()
    bands = bands_of(held.shares, meter, held.unit)
    return tuple(untold(held.shares, bands, meter, held.unit))


def _flaw(asked: Asked, held: Held, meter: Meter, one: Untold) -> Flaw:
    return Flaw(
        ("steps", asked.name, "answers", one.answer),
        f"{meter.title} can never prove `{one.answer}` ({one.readings}){held.where}: {one.why}",
        "join the answer with its neighbour, widen the limits, or tell of a better meter",
        is_key=True,
    )
