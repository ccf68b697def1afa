"""What follows from the figures of a machine sheet."""

from __future__ import annotations

from pullcord.model.machine import Machine, SheetValue
from pullcord.readings.derived import derived_from


def lines(metres: float | None = None, **values: str) -> dict[str, str]:
    """Return the derived lines of a sheet with these values."""
    named = {name.replace("_", "-"): SheetValue(value=text) for name, text in values.items()}
    machine = Machine(machine="m", title="M", kind="pump", values=named, altitude_metres=metres)
    return {line.title: line.text for line in derived_from(machine)}


def test_bore_and_stroke_give_the_displacement() -> None:
    """68 × 54 mm is 196 cc, by definition."""
    assert lines(bore="68 mm", stroke="54 mm") == {"Displacement": "196 cc"}
    assert lines(bore="68 mm") == {}


def test_pitch_gives_lengths_to_hold_a_rule_to() -> None:
    """12 links of 12.7 mm are 6 inches new; with 80 teeth they are worn out at 2.5 %."""
    found = lines(chain_pitch="12.7 mm", chain_links="78 links", rear_sprocket_teeth="80 teeth")
    assert found["Chain over 12 links"].startswith(
        "new 152.4 mm (6.000 in); replace at 156.2 mm (6.150 in) (2.5 %)"
    )
    assert found["Pitch diameter, rear sprocket"] == "323.5 mm (12.736 in)"


def test_a_stretch_longer_than_the_chain_is_left_out() -> None:
    """Nobody measures 20 links of a chain that has 16."""
    assert "Chain over 20 links" not in lines(chain_pitch="12.7 mm", chain_links="16 links")


def test_compression_is_put_to_the_height_of_the_place() -> None:
    """At 1500 m a good 1000 kPa reads 835 kPa; near sea level nothing is said."""
    assert lines(1500, compression="1000 kPa") == {
        "Compression at 1500 m": "835 kPa (121.1 psi), as the air there has 85 kPa"
    }
    assert lines(20, compression="1000 kPa") == {}


def test_a_tank_says_what_a_falling_gauge_means() -> None:
    """Boyle: 7 l that lose 1 of 101.325 kPa have lost 0.069 l of air."""
    text = lines(tank_volume="7 l")["Leak-down of the empty tank"]
    assert text == "1 kPa lost in an hour is 0.069 l of air, 5 kPa is 0.35 l"


def test_a_tyre_reads_less_in_the_cold_without_a_leak() -> None:
    """Amontons: (24 + 101.325) · 273.15 / 293.15 - 101.325 = 15.4 kPa at 0 °C."""
    text = lines(tyre_pressure_front="24 kPa")["Tyre pressure front, no leak"]
    assert text.startswith("set to 24 kPa (3.5 psi) at 20 °C it reads 15 kPa (2.2 psi) at 0 °C, ")
    assert lines(tyre_pressure_front="21x7-10") == {}


def test_nonsense_is_passed_over() -> None:
    """A figure that cannot be read is a finding elsewhere, and never a crash here."""
    assert lines(bore="wide", stroke="54 mm", chain_pitch="0 mm", compression="5 V") == {}
    assert lines(bore="999999999 m", stroke="999999999 m", chain_pitch="999999999 ft") == {}
    two_teeth = lines(chain_pitch="12.7 mm", rear_sprocket_teeth="2 teeth")
    assert "Pitch diameter, rear sprocket" not in two_teeth
