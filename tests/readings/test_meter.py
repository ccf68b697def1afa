"""The shop's meter, as its sheet describes it."""

from __future__ import annotations

import pytest

from pullcord.model.meter import MeterRange, MeterSheet
from pullcord.readings.meter import meter_faults, parse_meter
from pullcord.readings.scale import scale_of
from pullcord.readings.unit import ReadingError


def test_the_default_is_a_cheap_meter() -> None:
    """Five ohm ranges, three for volts, two for amps, smallest first; common practice."""
    meter = parse_meter(MeterSheet())
    assert [one.dial for one in meter.ranges_for("resistance")] == [
        "200 ohm", "2 kohm", "20 kohm", "200 kohm", "2 Mohm",
    ]  # fmt: skip
    assert [one.dial for one in meter.ranges_for("voltage")] == ["2 V", "20 V", "200 V"]
    assert [one.dial for one in meter.ranges_for("current")] == ["200 mA", "10 A"]


def test_it_counts_to_1999() -> None:
    """A 3½-digit display shows 0.0 to 199.9 on 200 ohm, then 200 to 1999 on 2 kohm."""
    scale = scale_of(parse_meter(MeterSheet()).ranges_for("resistance"))
    assert scale is not None
    assert [float(scale.shown(display)) for display in (0, 1999, 2000, 3799)] == [
        0.0, 199.9, 200.0, 1999.0,
    ]  # fmt: skip
    assert scale.shown(scale.over).is_infinite()
    assert float(scale.shown(scale.over - 1)) == 1_999_000.0


def test_the_leads_count_only_for_resistance() -> None:
    """Nobody holds the probes together to read volts."""
    meter = parse_meter(MeterSheet(leads="0.4 ohm"))
    assert {one.leads for one in meter.ranges_for("resistance")} == {0.2}
    assert {one.leads for one in meter.ranges_for("voltage")} == {0.0}


def row(up_to: str, step: str) -> MeterRange:
    """Return a range with plain errors."""
    return MeterRange(up_to=up_to, step=step, percent=1, digits=2)


@pytest.mark.parametrize(
    ("sheet", "place", "says"),
    [
        (MeterSheet(leads="0.3 V"), ("leads",), "is a voltage, but a resistance is measured"),
        (MeterSheet(leads="short"), ("leads",), "not a number with a unit"),
        (MeterSheet(ranges=(row("200 ohm", "0.1 V"),)), ("ranges", 0), "a step of 0.1 V"),
        (MeterSheet(ranges=(row("200 ohm", "300 ohm"),)), ("ranges", 0), "cannot have a step"),
        (MeterSheet(ranges=(row("200 ohm", "0 ohm"),)), ("ranges", 0), "cannot have a step"),
        (MeterSheet(ranges=(row("2 Mohm", "0.1 ohm"),)), ("ranges", 0), "cannot have a step"),
        (MeterSheet(ranges=(row("90 °C", "1 °C"),)), ("ranges", 0), "taken at its word"),
        (MeterSheet(ranges=(row("200", "1 ohm"),)), ("ranges", 0), "has no unit"),
    ],
)
def test_a_wrong_sheet_says_where(
    sheet: MeterSheet, place: tuple[str | int, ...], says: str
) -> None:
    """Every fault has its place in the sheet, and parsing stops at the first."""
    ((where, error),) = meter_faults(sheet)
    assert where == place
    assert says in str(error)
    with pytest.raises(ReadingError):
        parse_meter(sheet)
