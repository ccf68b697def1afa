"""Wire colour codes against the published table."""

from __future__ import annotations

import pytest

from pullcord.model.wire import COLOURS, WireError, parse_wire

# IEC 60757 (IEC 757:1983) as printed in GOST 28763-90, table 7, quoted on a reference page; the
# letters are retyped, as that page mixes in look-alikes of another alphabet.
PUBLISHED = ["BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "TQ", "GD", "SR"]


def test_codes_and_their_order() -> None:
    """Same codes, same order."""
    assert list(COLOURS) == PUBLISHED


def test_red_and_blue() -> None:
    """IEC 60757:2021, 5.1, as quoted on a page about it: red and blue are written RDBU."""
    assert parse_wire("RDBU").code == "RDBU"
    with pytest.raises(WireError):
        parse_wire("BURD")


def test_green_and_yellow() -> None:
    """The same clause: green and yellow only as GNYE."""
    assert parse_wire("GNYE").code == "GNYE"
    for other in ("YEGN", "GN/YE", "YE/GN"):
        with pytest.raises(WireError):
            parse_wire(other)
