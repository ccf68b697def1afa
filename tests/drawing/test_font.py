"""The typeface: what is measured is what is embedded."""

from __future__ import annotations

import base64
import io
import re
from functools import cache

import pytest
from fontTools.ttLib import TTFont

from pullcord.drawing.font import FAMILY, WEIGHTS, Weight, read_face, render_font_css, subset_woff2

TRADE_SIGNS = "Ωµ°–—±×≥≤≈½¼¾²³→✓☐€éßøåŁ"


@cache
def cut_down(weight: Weight) -> bytes:
    """Return the cut-down font, made once for all tests."""
    return subset_woff2(weight)


def embedded(weight: Weight) -> TTFont:
    """Return the cut-down font as a browser would read it."""
    return TTFont(io.BytesIO(cut_down(weight)))


@pytest.mark.parametrize("sign", TRADE_SIGNS)
def test_has_the_signs_of_the_trade(sign: str) -> None:
    """A sign that a mechanic writes is drawn from our own typeface, in both weights."""
    assert all(ord(sign) in read_face(weight).advances_em for weight in WEIGHTS)


@pytest.mark.parametrize("weight", WEIGHTS)
def test_measures_what_is_embedded(weight: Weight) -> None:
    """The embedded font holds exactly the measured characters, with the same advances."""
    font = embedded(weight)
    glyphs, widths, per_em = font.getBestCmap(), font["hmtx"].metrics, font["head"].unitsPerEm
    drawn = {code: widths[glyph][0] / per_em for code, glyph in glyphs.items()}
    assert drawn == read_face(weight).advances_em


@pytest.mark.parametrize("weight", WEIGHTS)
def test_embedded_font_neither_kerns_nor_ligates(weight: Weight) -> None:
    """Nothing in the file can make a drawn line differ from the sum of its advances."""
    assert {"GPOS", "GSUB", "kern"}.isdisjoint(embedded(weight).keys())


@pytest.mark.parametrize("weight", WEIGHTS)
def test_bears_its_own_name_and_the_licence(weight: Weight) -> None:
    """The licence keeps the original's name for the original and wants to come along (OFL 1.1)."""
    names = {record.nameID: record.toUnicode() for record in embedded(weight)["name"].names}
    assert names[1] == FAMILY
    assert "Source" not in names[1] + names[4] + names[6]
    assert "SIL Open Font License, Version 1.1" in names[13]
    assert names[0].startswith("Copyright")


@pytest.mark.parametrize("weight", WEIGHTS)
def test_is_small_and_always_the_same(weight: Weight) -> None:
    """Embedding costs little, and two builds give the same bytes."""
    assert subset_woff2(weight) == cut_down(weight)
    assert len(cut_down(weight)) < 30_000


def test_css_holds_the_fonts_themselves() -> None:
    """The stylesheet names our family twice, once a weight, and asks for no other file."""
    css = render_font_css({"regular": b"wOF2-r", "bold": b"wOF2-b"})
    assert css.count(f'font-family:"{FAMILY}"') == 2
    assert re.findall(r"font-weight:(\d+)", css) == ["400", "700"]
    found = re.findall(r'url\("data:font/woff2;base64,([^"]+)"\)', css)
    assert [base64.b64decode(data) for data in found] == [b"wOF2-r", b"wOF2-b"]
    assert css.count("url(") == 2
