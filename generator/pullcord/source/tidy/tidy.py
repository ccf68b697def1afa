"""The canonical form of a file, given the order of its keys."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import dropwhile
from typing import Any

from pullcord.errors import PullcordError
from pullcord.finding import Place
from pullcord.source.comments import comments_in
from pullcord.source.compose import Composed, Span, Spot, compose
from pullcord.source.decode import read_text
from pullcord.source.ends import end_of
from pullcord.source.tidy.emit import BLANK, Order, Writer
from pullcord.source.tidy.parts import Block, Reader, block_entries
from pullcord.source.tidy.remarks import attach


class TidyError(PullcordError):
    """The file is left as it is: it cannot be read, or is written in a way not understood."""


def tidy(raw: bytes, order: Order) -> bytes:
    """Return a file's bytes in canonical form: UTF-8 without a mark, lines that end in `\\n`.

    The data is the same but for the order of keys that `order` changes, and every comment is still
    there. Raises TidyError when that cannot be kept, or the text has flaws.
    """
    text, flaws = read_text(raw)
    text = text if text.endswith("\n") else f"{text}\n"
    composed = compose(text)
    if flaws or composed.flaws or not isinstance(composed.data, dict) or composed.root is None:
        raise TidyError("the file cannot be read: run `pullcord check`")
    new = "".join(f"{line}\n" for line in _settled(_lines(text, composed, composed.root, order)))
    if not _is_same(text, composed, new, order):
        raise TidyError("the file is written in a way that is not understood, and stays as it is")
    return new.encode()


def _lines(text: str, composed: Composed, root: Spot, order: Order) -> Iterator[str]:
    comments = [index for index, _, _ in comments_in(text, composed.spans)]
    node = Reader(text, composed.spans, comments).node(root, composed.data, 0)
    if not isinstance(node, Block):
        raise TidyError("the file is written between braces: write one `key: value` a line")
    entries = list(block_entries(node))
    rest = attach(text, entries, comments, sorted(_values(text, root)))
    writer = Writer(order)
    yield from (line or BLANK for line in rest.head)
    yield from writer.block(node, (), 0)
    foot = dropwhile(lambda line: not line, rest.foot) if writer.is_open(node, ()) else rest.foot
    yield from (line or BLANK for line in foot)


def _settled(lines: Iterator[str]) -> Iterator[str]:
    """Yield lines with blank ones one at a time, and none at the start and the end."""
    before = ""
    for line in lines:
        if line != BLANK:
            if before.startswith(BLANK):
                yield ""
            yield line
        before = BLANK if line == BLANK and before else line if line != BLANK else before


def _values(text: str, spot: Spot) -> Iterator[Span]:
    """Yield where each text, and whatever is between brackets, begins and ends."""
    _, start, _, below = spot
    if below is None or text[start] in ("[", "{"):
        # A block of text begins on the line below its `|` or `>`: a comment may stand behind those.
        first = text.find("\n", start) if text[start : start + 1] in ("|", ">") else start
        yield first, end_of(text, spot)
        return
    for part in below.values() if isinstance(below, dict) else below:
        yield from _values(text, part)


def _is_same(text: str, composed: Composed, new: str, order: Order) -> bool:
    """Whether a new text has the same data in the order wanted, and the same comments."""
    after = compose(new)
    if after.flaws or not _is_same_data(composed.data, after.data, (), order):
        return False
    return _comments(text, composed) == _comments(new, after)


def _is_same_data(old: Any, new: Any, place: Place, order: Order) -> bool:
    if isinstance(old, dict) and isinstance(new, dict):
        keys = list(order(place, list(old)))
        return keys == list(new) and all(
            _is_same_data(old[key], new[key], (*place, key), order) for key in keys
        )
    if isinstance(old, list) and isinstance(new, list):
        pairs = enumerate(zip(old, new, strict=False))
        return len(old) == len(new) and all(
            _is_same_data(*pair, (*place, position), order) for position, pair in pairs
        )
    return type(old) is type(new) and bool(old == new)


def _comments(text: str, composed: Composed) -> list[str]:
    return sorted(words for _, words, _ in comments_in(text, composed.spans))
