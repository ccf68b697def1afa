"""The text of a file as plain data whose every key and value knows its line and column."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any

from pullcord.finding import Flaw, Place
from pullcord.source.comments import lost_texts
from pullcord.source.compose import Composed, Data, Spot, compose
from pullcord.source.decode import read_text
from pullcord.source.flaw import MOST_FLAWS, Mark, TextFlaw, mark_at
from pullcord.source.plain import read_plain


@dataclass(frozen=True)
class Tree:
    """One file's data. Every scalar is the text that was written: `no`, `012` and `1.10` too."""

    text: str
    """What the file says, with `\\n` line ends."""
    data: Data | None
    """The root mapping, or None when there is none to read."""
    flaws: tuple[TextFlaw, ...]
    """What is wrong with the text, in the order of its lines."""
    spoilt: frozenset[Place] = frozenset()
    """Places left out of `data` because of a flaw: whatever is missing there is no news."""
    root: Spot | None = None
    """Where everything stands; read it with `find_mark`."""


def read_data(raw: bytes) -> Tree:
    """Read a YAML file's bytes as `read_tree` does, but for what they say alone.

    Where things stand is left out (`root` is None) if nothing is wrong.
    """
    text, flaws = read_text(raw)
    data = None if flaws else read_plain(text)
    return Tree(text, data, ()) if isinstance(data, dict) else _read(text, flaws)


def read_tree(raw: bytes) -> Tree:
    """Read a YAML file's bytes. Never raises: whatever is wrong is in `flaws`."""
    return _read(*read_text(raw))


def _read(text: str, flaws: tuple[TextFlaw, ...]) -> Tree:
    if any(flaw.rule != "tab-indent" for flaw in flaws):
        return Tree(text, None, flaws)
    composed = compose(text)
    lost = lost_texts(text[: composed.read_to], composed.spans)
    found = {*flaws, *lost, *_not_said_by(composed.flaws, (*flaws, *lost))}
    data, root_flaws = _root_mapping(composed)
    return Tree(
        text,
        data,
        _within(text, sorted(found or root_flaws)[:MOST_FLAWS]),
        frozenset(composed.spoilt),
        composed.root,
    )


def find_mark(tree: Tree, flaw: Flaw) -> Mark:
    """Return the line and column a flaw points at, for the longest part of its place that exists.

    A key that is wrong, and a whole mapping or list, is pointed at by its key; a value by its
    start or, when the flaw names a word of it, by that word.
    """
    spot, is_whole = _find_spot(tree.root, flaw.at)
    return mark_at(tree.text, _index_of(tree.text, spot, flaw, is_whole) if spot else 0)


def _index_of(text: str, spot: Spot, flaw: Flaw, is_whole: bool) -> int:
    key, start, end, children = spot
    if key >= 0 and (children is not None or (flaw.is_key and is_whole)):
        return key
    return max(start, text.find(flaw.word, start, end)) if flaw.word else start


def _find_spot(root: Spot | None, place: Place) -> tuple[Spot | None, bool]:
    """Return the deepest known spot on the way to a place, and whether it is the place itself."""
    spot = root
    for step in place:
        below = _spot_below(spot[3], step) if spot is not None else None
        if below is None:
            return spot, False
        spot = below
    return spot, True


def _spot_below(children: Any, step: str | int) -> Spot | None:
    if isinstance(children, dict):
        return children.get(step)
    is_there = isinstance(children, list) and isinstance(step, int) and 0 <= step < len(children)
    return children[step] if is_there else None


def _root_mapping(composed: Composed) -> tuple[Data | None, tuple[TextFlaw, ...]]:
    if isinstance(composed.data, dict):
        return composed.data, ()
    mark = Mark(1, 1)
    message = "the file is empty" if composed.data is None else "the file is not made of keys"
    mend = "write `key: value` lines, beginning with the name of what it describes"
    return None, (TextFlaw(mark, "not-a-mapping", message, mend),)


def _within(text: str, flaws: Iterable[TextFlaw]) -> tuple[TextFlaw, ...]:
    """Point at the end of the last line rather than behind it, where there is nothing to see."""
    end = mark_at(text, len(text.rstrip()))
    return tuple(replace(flaw, mark=min(flaw.mark, end)) for flaw in flaws)


def _not_said_by(flaws: list[TextFlaw], better: tuple[TextFlaw, ...]) -> list[TextFlaw]:
    """Leave out what only follows from a tab or a lost text on the same line."""
    lines = {flaw.mark.line for flaw in better}
    consequences = {"yaml-syntax", "empty-value"}
    return [f for f in flaws if f.rule not in consequences or f.mark.line not in lines]
