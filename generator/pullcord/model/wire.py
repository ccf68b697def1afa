"""Wire colours by letter code.

The codes and their order are those of IEC 60757 (table as printed in GOST 28763-90, which is
IEC 757:1983; the standard itself was not read). Two colours in one code are joined in the table's
order; green with yellow is only ever written GNYE, and is the protective conductor. For a stripe
the trade writes `BK/WH`: the colour of the wire, a slash, the colour of the stripe.
"""

from __future__ import annotations

from dataclasses import dataclass

COLOURS = {
    "BK": "black",
    "BN": "brown",
    "RD": "red",
    "OG": "orange",
    "YE": "yellow",
    "GN": "green",
    "BU": "blue",
    "VT": "violet",
    "GY": "grey",
    "WH": "white",
    "PK": "pink",
    "TQ": "turquoise",
    "GD": "gold",
    "SR": "silver",
}
"""Letter code to plain name, in the table's order."""

PROTECTIVE = "GNYE"

OTHER_NAMES = {"purple": "VT", "gray": "GY"}
"""Names people write for colours the table calls otherwise."""

_ORDER = tuple(COLOURS)


class WireError(ValueError):
    """A wire colour that cannot be read; `mend` says what to write."""

    def __init__(self, message: str, mend: str) -> None:
        """Keep what would put it right beside what is wrong."""
        super().__init__(message)
        self.mend = mend


@dataclass(frozen=True)
class Wire:
    """The colour of a wire: one code, and the code of its stripe if it has one."""

    base: str
    """Code of the wire's own colour."""
    second: str = ""
    """Code of the stripe or of the second colour; "" for a plain wire."""
    is_striped: bool = False
    """Written with a slash, so that the base colour is known from the stripe's."""

    @property
    def code(self) -> str:
        """Return the code as it is written: `BK`, `BK/WH`, `RDBU` or `GNYE`."""
        return "/".join((self.base, self.second)) if self.is_striped else self.base + self.second

    @property
    def words(self) -> str:
        """Return the colours in words: `black with a white stripe`."""
        if not self.second:
            return COLOURS[self.base]
        joint = f" with a {COLOURS[self.second]} stripe" if self.is_striped else ""
        return COLOURS[self.base] + (joint or f" and {COLOURS[self.second]}")


def parse_wire(text: str) -> Wire:
    """Read `BK`, `BK/WH`, `RDBU` or `GNYE`; raise `WireError` with the nearest code."""
    written = text.strip().upper()
    base, slash, stripe = (part.strip() for part in written.partition("/"))
    if {base, stripe} == {"GN", "YE"} or written == "YEGN":
        raise WireError(
            f"wire `{text}`: green with yellow has one code of its own", f"write `{PROTECTIVE}`"
        )
    if written == PROTECTIVE:
        return Wire("GN", "YE")
    if slash:
        return Wire(_colour(base, text), _colour(stripe, text), is_striped=True)
    if len(base) == 4 and not _named(base):
        return _joined(_colour(base[:2], text), _colour(base[2:], text), text)
    return Wire(_colour(base, text))


def _joined(first: str, second: str, text: str) -> Wire:
    if _ORDER.index(first) >= _ORDER.index(second):
        right = f"`{second}{first}`" if first != second else f"`{first}`"
        raise WireError(
            f"wire `{text}`: two colours are joined in the order of IEC 60757",
            f"write {right}, or `{first}/{second}` when {COLOURS[second]} is the stripe",
        )
    return Wire(first, second)


def _named(word: str) -> str | None:
    names = {name: code for code, name in COLOURS.items()} | OTHER_NAMES
    return names.get(word.lower())


def _colour(code: str, text: str) -> str:
    if code in COLOURS:
        return code
    names = {name: code for code, name in COLOURS.items()} | OTHER_NAMES
    near = [own for name, own in names.items() if code and name.startswith(code.lower())]
    mend = " or ".join(f"`{own}` for {COLOURS[own]}" for own in near)
    raise WireError(
        f"wire `{text}`: `{code}` is no colour code",
        f"write {mend}" if near else "use one of " + " ".join(COLOURS),
    )
