"""The typeface of the charts: measured here, embedded in the page, so that both are the same.

The outlines are those of Source Sans Pro (SIL Open Font License 1.1), taken from the package
`font-source-sans-pro`. The licence reserves the name, so the cut-down copy bears our own.
"""

from __future__ import annotations

import base64
import io
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Literal

from font_source_sans_pro import font_files_ttf
from fontTools.ttLib import TTFont

Weight = Literal["regular", "bold"]
WEIGHTS: tuple[Weight, ...] = ("regular", "bold")
FAMILY = "Pullcord Sans"

_FILES = {"regular": "SourceSansPro", "bold": "SourceSansProBold"}
_CSS_WEIGHT = {"regular": 400, "bold": 700}
_BLOCKS = (
    range(0x0020, 0x0180),  # Latin, with the letters of Europe
    range(0x0300, 0x0370),  # combining accents
    range(0x0370, 0x0460),  # Greek and Cyrillic, without the historic letters
    range(0x2000, 0x2C00),  # dashes, quotes, primes, ohm, arrows, signs, tick boxes
)
_UNUSED_TABLES = ["BASE", "DSIG", "GDEF", "GPOS", "GSUB", "kern"]
_NAME_COPYRIGHT, _NAME_LICENCE, _NAME_LICENCE_ADDRESS = 0, 13, 14
_FAMILY_NAMES = {1: FAMILY, 4: FAMILY, 6: FAMILY.replace(" ", "")}
_SUBSET = {
    "layout_features": [],
    "hinting": False,
    "notdef_outline": True,
    "name_IDs": [*_FAMILY_NAMES, _NAME_COPYRIGHT, _NAME_LICENCE, _NAME_LICENCE_ADDRESS],
}


@dataclass(frozen=True)
class Face:
    """What one weight of the typeface says about its characters."""

    advances_em: Mapping[int, float]
    """How far each code point moves the pen, in multiples of the type size."""
    ascent_em: float
    """From the baseline to the top of the line, in multiples of the type size."""
    descent_em: float
    """From the baseline to the bottom of the line, in multiples of the type size."""


@cache
def read_face(weight: Weight) -> Face:
    """Return the advance widths of the characters that are embedded, from the font's own tables."""
    with TTFont(font_files_ttf[_FILES[weight]], lazy=True) as font:
        per_em = font["head"].unitsPerEm
        widths = font["hmtx"].metrics
        wanted = _wanted(font)
        return Face(
            advances_em=MappingProxyType(
                {code: widths[wanted[code]][0] / per_em for code in wanted}
            ),
            ascent_em=font["hhea"].ascent / per_em,
            descent_em=-font["hhea"].descent / per_em,
        )


@cache
def subset_woff2(weight: Weight) -> bytes:
    """Return the font cut down to the embedded characters, without kerning, ligatures and hints.

    The same installed packages give the same bytes: no time of making is written into it.
    """
    from fontTools import subset  # Slow to load, and mostly the fonts are there already.

    options = subset.Options()
    for name, value in _SUBSET.items():
        setattr(options, name, value)
    options.drop_tables += _UNUSED_TABLES
    with TTFont(font_files_ttf[_FILES[weight]], recalcTimestamp=False) as font:
        cutter = subset.Subsetter(options)
        cutter.populate(unicodes=_wanted(font))
        cutter.subset(font)
        for record in font["name"].names:
            record.string = _FAMILY_NAMES.get(record.nameID, record.toUnicode())
        font.flavor = "woff2"
        file = io.BytesIO()
        font.save(file)
        return file.getvalue()


def render_font_css(files: Mapping[Weight, bytes]) -> str:
    """Return the @font-face rules with the given WOFF2 files inside them.

    Inside, because some browsers refuse a page opened from a folder its neighbouring font files.
    """
    notice = "/* Outlines: Source Sans Pro, SIL Open Font License 1.1; cut down and renamed. */\n"
    return notice + "".join(_rule(weight, files[weight]) for weight in WEIGHTS)


def _rule(weight: Weight, file: bytes) -> str:
    data = base64.b64encode(file).decode("ascii")
    return (
        f'@font-face{{font-family:"{FAMILY}";font-style:normal;'
        f"font-weight:{_CSS_WEIGHT[weight]};font-display:block;"
        f'src:url("data:font/woff2;base64,{data}") format("woff2")}}\n'
    )


def _wanted(font: TTFont) -> dict[int, str]:
    glyphs: dict[int, str] = font.getBestCmap()
    return {code: glyphs[code] for block in _BLOCKS for code in block if code in glyphs}
