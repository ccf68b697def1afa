"""Bytes to clean text: UTF-8, no control characters, bounded size, one kind of line end."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from itertools import islice

from pullcord.source.flaw import MOST_FLAWS, Mark, TextFlaw, mark_at

MOST_BYTES = 256 * 1024
"""A file longer than this is not a procedure, a machine sheet or a job log."""

UNSEEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff\ud800-\udfff]"
)
"""Control characters, line ends no editor counts, and marks that reorder what is seen."""

_TAB_INDENT = re.compile(r"^[ ]*\t[ \t]*(?=\S)", re.MULTILINE)
_OTHER_ENCODINGS = ((b"\xff\xfe", "UTF-16"), (b"\xfe\xff", "UTF-16"))


def read_text(raw: bytes) -> tuple[str, tuple[TextFlaw, ...]]:
    """Return the text with `\\n` line ends, and its flaws.

    A byte order mark is dropped. The text is empty when the bytes are too many or not UTF-8.
    """
    if len(raw) > MOST_BYTES:
        return "", (_too_large(len(raw)),)
    for start, name in _OTHER_ENCODINGS:
        if raw.startswith(start):
            return "", (_not_utf8(Mark(1, 1), f"the file is saved as {name}"),)
    try:
        text = raw.decode("utf-8").removeprefix("\ufeff")
    except UnicodeDecodeError as error:
        return "", (_bad_byte(raw, error.start),)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    return text, tuple(islice((*_unseen(text), *_tab_indents(text)), MOST_FLAWS))


def name_of(character: str) -> str:
    """Return a character's number and its name, for someone who cannot see it."""
    return f"U+{ord(character):04X} {unicodedata.name(character, '')}".strip()


def _unseen(text: str) -> Iterator[TextFlaw]:
    for found in islice(UNSEEN.finditer(text), MOST_FLAWS):
        yield TextFlaw(
            mark_at(text, found.start()),
            "control-character",
            f"there is an invisible character here ({name_of(found.group())})",
            "delete it and type the text again; it often comes along when text is pasted",
        )


def _tab_indents(text: str) -> Iterator[TextFlaw]:
    for found in islice(_TAB_INDENT.finditer(text), MOST_FLAWS) if "\t" in text else ():
        tab = text.index("\t", found.start())
        yield TextFlaw(
            mark_at(text, tab),
            "tab-indent",
            "this line is indented with a tab",
            "use spaces, two for each level",
        )


def _too_large(size: int) -> TextFlaw:
    return TextFlaw(
        Mark(1, 1),
        "file-too-large",
        f"the file has {size} bytes; the most that is read is {MOST_BYTES}",
        "split it into several files",
    )


def _not_utf8(mark: Mark, what: str) -> TextFlaw:
    return TextFlaw(mark, "not-utf8", what, "save the file as UTF-8 in your editor")


def _bad_byte(raw: bytes, start: int) -> TextFlaw:
    before = raw[:start].decode("utf-8").removeprefix("\ufeff")
    before = before.replace("\r\n", "\n").replace("\r", "\n")
    return _not_utf8(
        mark_at(before, len(before)),
        f"the byte 0x{raw[start]:02X} here is not UTF-8 text",
    )
