"""Wire colours by letter code."""

from __future__ import annotations

import pytest

from pullcord.model.wire import COLOURS, Wire, WireError, parse_wire


@pytest.mark.parametrize(
    ("text", "wire", "words"),
    [
        ("BK", Wire("BK"), "black"),
        ("bk", Wire("BK"), "black"),
        ("BK/WH", Wire("BK", "WH", True), "black with a white stripe"),
        ("WH/BK", Wire("WH", "BK", True), "white with a black stripe"),
        ("RDBU", Wire("RD", "BU"), "red and blue"),
        ("GNYE", Wire("GN", "YE"), "green and yellow"),
    ],
)
def test_codes_are_read(text: str, wire: Wire, words: str) -> None:
    """One colour, a stripe after a slash, or two colours joined."""
    assert parse_wire(text) == wire
    assert parse_wire(text).words == words
    assert parse_wire(wire.code) == wire


@pytest.mark.parametrize(
    ("text", "mend"),
    [
        ("BL", "write `BK` for black or `BU` for blue"),
        ("GR", "write `GN` for green or `GY` for grey"),
        ("BR", "write `BN` for brown"),
        ("PU", "write `VT` for violet"),
        ("black", "write `BK` for black"),
        ("Green", "write `GN` for green"),
        ("BK/green", "write `GN` for green"),
        ("BURD", "write `RDBU`, or `BU/RD` when red is the stripe"),
        ("WHWH", "write `WH`"),
        ("YEGN", "write `GNYE`"),
        ("GN/YE", "write `GNYE`"),
        ("YE/GN", "write `GNYE`"),
        ("QQ", "use one of BK BN RD"),
        ("", "use one of BK BN RD"),
        ("BK/", "use one of BK BN RD"),
        ("BK/WH/RD", "use one of BK BN RD"),
    ],
)
def test_wrong_codes_say_what_to_write(text: str, mend: str) -> None:
    """An unknown colour names the nearest; two colours keep the standard's order."""
    with pytest.raises(WireError) as caught:
        parse_wire(text)
    assert caught.value.mend.startswith(mend)


def test_codes_are_plain_letters() -> None:
    """Look-alike letters of other alphabets crept into a printed table: none here."""
    assert all(code.isascii() and code.isupper() and len(code) == 2 for code in COLOURS)
