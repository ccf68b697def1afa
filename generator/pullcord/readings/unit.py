"""Units: what may be written after a number, and what it is worth.

Exact by definition: 1 in = 25.4 mm and 1 lb = 0.45359237 kg (international yard and pound, 1959),
standard gravity 9.80665 m/s², 0 °C = 273.15 K, °F = 32 + 9/5 °C (NIST SP 811, appendix B).
Factors lead to the base unit of each quantity: ohm, V, A, mm, kPa, rpm, s, ml, °C, N m, 1, Hz, nF.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from difflib import get_close_matches

from pullcord.errors import PullcordError
from pullcord.model.quantity import Quantity


class ReadingError(PullcordError):
    """A figure that cannot be used; `mend` says what would put it right."""

    def __init__(self, message: str, mend: str = "") -> None:
        """Keep the mend beside the message."""
        super().__init__(message)
        self.mend = mend


PLACES = 12
"""Decimals kept in base units, so that 212 °F is 100 °C and not a hair less."""


@dataclass(frozen=True)
class Unit:
    """A unit of measure."""

    name: str
    """As it is written in sentences, such as `kohm`."""
    symbol: str
    """As it is written where room is scarce, such as `kΩ`."""
    quantity: Quantity
    """What it measures."""
    factor: Decimal
    """How many base units it is."""
    offset: Decimal = Decimal(0)
    """What is added after the factor; only °F has one."""

    def to_base(self, number: Decimal) -> Decimal:
        """Return a number of this unit in base units; infinity stays infinity."""
        exact = number * self.factor + self.offset
        return round(exact, PLACES) if exact.is_finite() else exact

    def from_base(self, number: Decimal) -> Decimal:
        """Return a number of base units in this unit."""
        exact = (number - self.offset) / self.factor
        return round(exact, PLACES - 3) if exact.is_finite() else exact


PSI = Decimal("0.45359237") * Decimal("9.80665") / Decimal("0.0254") ** 2 / 1000
"""Kilopascals in a pound-force per square inch: 6.894757..."""
FOOT_POUND = Decimal("0.45359237") * Decimal("9.80665") * Decimal("0.3048")
"""Newton metres in a pound-force foot: 1.355817..."""
FAHRENHEIT = Decimal(5) / Decimal(9)

_TABLE: tuple[tuple[Quantity, str, str, Decimal | str, str], ...] = (
    # quantity, name, symbol, factor, other spellings separated by blanks ("_" for a blank)
    ("resistance", "ohm", "Ω", "1", "ohms Ohm Ohms OHM \N{OHM SIGN} R"),
    ("resistance", "kohm", "kΩ", "1e3", "kohms kOhm Kohm KOhm KOHM k\N{OHM SIGN} k K kilohm"),
    ("resistance", "Mohm", "MΩ", "1e6", "Mohms MOhm MOHM M\N{OHM SIGN} M megohm megohms"),
    ("voltage", "V", "V", "1", "v volt volts Volt Volts"),
    ("voltage", "mV", "mV", "1e-3", "millivolt millivolts"),
    ("voltage", "kV", "kV", "1e3", "kilovolt kilovolts"),
    ("current", "A", "A", "1", "amp amps ampere amperes"),
    ("current", "mA", "mA", "1e-3", "milliamp milliamps"),
    ("length", "mm", "mm", "1", "millimetre millimetres"),
    ("length", "cm", "cm", "10", "centimetre centimetres"),
    ("length", "m", "m", "1000", "metre metres"),
    ("length", "in", "in", "25.4", "inch inches ″ in."),
    ("length", "ft", "ft", "304.8", "foot feet"),
    ("pressure", "kPa", "kPa", "1", "kpa KPa kilopascal"),
    ("pressure", "bar", "bar", "100", "Bar"),
    ("pressure", "psi", "psi", PSI, "PSI lb/in² lb/sq_in"),
    ("speed", "rpm", "rpm", "1", "RPM rev/min r/min 1/min"),
    ("time", "s", "s", "1", "sec second seconds"),
    ("time", "min", "min", "60", "minute minutes"),
    ("time", "h", "h", "3600", "hour hours"),
    ("volume", "ml", "ml", "1", "mL millilitre millilitres"),
    ("volume", "cc", "cc", "1", "cm³ cm3 ccm"),
    ("volume", "l", "l", "1000", "L litre litres"),
    ("temperature", "°C", "°C", "1", "C degC \N{DEGREE CELSIUS}"),
    ("temperature", "°F", "°F", FAHRENHEIT, "F degF \N{DEGREE FAHRENHEIT}"),
    ("torque", "N m", "N m", "1", "Nm N·m N-m N.m"),
    ("torque", "ft lb", "ft lb", FOOT_POUND, "ft-lb lb_ft lb-ft lbf_ft ft_lbf"),
    ("count", "count", "", "1", "counts pieces"),
    ("count", "links", "links", "1", "link pitches"),
    ("count", "teeth", "teeth", "1", "tooth"),
    ("count", "turns", "turns", "1", "turn"),
    ("ratio", "%", "%", "0.01", "percent per_cent"),
    ("ratio", ":1", ":1", "1", "to_1"),
    ("frequency", "Hz", "Hz", "1", "hertz"),
    ("frequency", "kHz", "kHz", "1e3", "kilohertz"),
    ("capacitance", "nF", "nF", "1", "nanofarad"),
    ("capacitance", "µF", "µF", "1e3", "uF \N{GREEK SMALL LETTER MU}F microfarad"),
)


def _unit(quantity: Quantity, name: str, symbol: str, factor: Decimal | str) -> Unit:
    offset = -32 * FAHRENHEIT if name == "°F" else Decimal(0)
    return Unit(name, symbol, quantity, Decimal(factor), offset)


UNITS = {row[1]: _unit(*row[:4]) for row in _TABLE}
"""Every unit by its name."""

_SPELLINGS = {
    spelling.replace("_", " "): UNITS[name]
    for _, name, symbol, _, others in _TABLE
    for spelling in (name, symbol, *others.split())
    if spelling
}


def parse_unit(text: str) -> Unit:
    """Return the unit a word stands for; raise `ReadingError` with the nearest one.

    Capitals count: M is a million and m a thousandth, and an ohm range is no place to guess.
    """
    word = " ".join(text.split())
    if word in _SPELLINGS:
        return _SPELLINGS[word]
    raise ReadingError(f"`{word}` is no unit Pullcord knows", _nearest(word))


def _nearest(word: str) -> str:
    for name in UNITS:
        if name.casefold() == word.casefold():
            return f"write `{name}`: capitals count, M is a million and m a thousandth"
    near = get_close_matches(word, UNITS, n=1, cutoff=0.6)
    return f"write `{near[0]}`" if near else "use one of " + ", ".join(UNITS)


def base_unit(quantity: Quantity) -> Unit:
    """Return the unit a quantity is kept in."""
    return next(
        unit for unit in UNITS.values() if (unit.quantity, unit.factor) == (quantity, Decimal(1))
    )
