"""Bytes that are not clean text are refused at the line they stand in."""

from __future__ import annotations

import pytest

from pullcord.source.decode import MOST_BYTES, read_text

CASES = {
    "UTF-16 as most editors write it": ("a: é\n".encode("utf-16"), "not-utf8", 1, 1),
    "UTF-16 the other way round": (b"\xfe\xff\0a", "not-utf8", 1, 1),
    "Latin-1": (b"a: b\nc: d\xe9", "not-utf8", 2, 5),
    "Latin-1 after a mark and old line ends": (b"\xef\xbb\xbfa: b\rc: d\xe9", "not-utf8", 2, 5),
    "a surrogate": (b"a: \xed\xa0\x80", "not-utf8", 1, 4),
    "an overlong slash": (b"a: \xc0\xaf", "not-utf8", 1, 4),
    "NUL": (b"a: b\0c", "control-character", 1, 5),
    "escape": (b"a:\n  \x1b[2J", "control-character", 2, 3),
    "delete": (b"a: \x7f", "control-character", 1, 4),
    "the other newline": ("a: b\u2028c".encode(), "control-character", 1, 5),
    "reversed order": ("a: b\u202ec".encode(), "control-character", 1, 5),
    "an isolate": ("a: b\u2066c".encode(), "control-character", 1, 5),
    "a byte order mark inside": ("a: b\ufeffc".encode(), "control-character", 1, 5),
    "a tab indent": (b"a:\n\tb: c", "tab-indent", 2, 1),
    "a tab after spaces": (b"a:\n  \tb: c", "tab-indent", 2, 3),
    "too large": (b"#" * (MOST_BYTES + 1), "file-too-large", 1, 1),
}


@pytest.mark.parametrize(("raw", "rule", "line", "column"), CASES.values(), ids=CASES)
def test_unclean_text_is_found(raw: bytes, rule: str, line: int, column: int) -> None:
    """The rule, the line and the column, as an editor counts them."""
    _, flaws = read_text(raw)
    assert [(f.rule, f.mark.line, f.mark.column) for f in flaws] == [(rule, line, column)]


CLEAN = {
    "letters of every script": "a: é Ω 漢 ü – ± µ Я\n",
    "written from right to left": "a: שלום\n",
    "outside the first plane": "a: 𝛀\n",
    "a tab between words": "a:\tb\n",
    "an empty line of tabs": "a: b\n\t\nc: d\n",
    "as large as may be": "#" * MOST_BYTES,
}


@pytest.mark.parametrize("text", CLEAN.values(), ids=CLEAN)
def test_clean_text_is_let_through(text: str) -> None:
    """The trade's signs and everyone's letters are welcome."""
    assert read_text(text.encode()) == (text, ())
