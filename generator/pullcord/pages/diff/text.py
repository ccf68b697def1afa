"""A comparison for a terminal: short changes on one line, long texts one below the other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from itertools import groupby
from textwrap import wrap

from pullcord.analysis.diff import Change, Difference

WIDTH = 96
SHORT = 60
"""Longer than this together, the old and the new text stand below one another."""
_INDENT = "  "
_SENTENCES = frozenset(
    {"added", "removed", "renamed", "reworded", "tool-renamed", "reached", "unreached"}
)
"""Changes whose words say all of it."""


def diff_text(differences: Iterable[Difference], words: Mapping[str, str]) -> str:
    """Return the comparison as text; `words` are those of `texts/diff.yaml`."""
    blocks = ["\n".join(_block(each, words)) for each in differences]
    return "\n\n".join(blocks) if blocks else words["nothing"]


def _block(difference: Difference, words: Mapping[str, str]) -> Iterator[str]:
    head = f"{words[difference.kind]} {difference.name}: {difference.title}"
    if difference.state != "changed":
        yield f"{head} ({words[f'file_{difference.state}']})"
        return
    yield head
    if difference.old_name:
        yield _INDENT + words["file_was"].format(old=difference.old_name)
    for part, changes in groupby(difference.changes, key=lambda each: each.part):
        yield ""
        yield _INDENT + words[part.value]
        for at, own in groupby(changes, key=lambda each: each.at):
            depth = 3 if at else 2
            if at:
                yield _INDENT * 2 + at.replace(":", " ")
            for change in own:
                yield from _lines(change, words, depth)


def _lines(change: Change, words: Mapping[str, str], depth: int) -> Iterator[str]:
    label = _say(words.get(_key(change, words), change.what), change)
    if change.what in _SENTENCES:
        yield from _wrapped(label, depth)
    elif not change.old or not change.new:
        said = _say(words["is_new" if change.new else "is_gone"], change)
        yield from _wrapped(f"{label}: {said}", depth)
    elif len(change.old) + len(change.new) <= SHORT:
        yield from _wrapped(f"{label}: {change.old} -> {change.new}", depth)
    else:
        yield from _wrapped(label, depth)
        yield from _wrapped(change.old, depth + 1, "- ")
        yield from _wrapped(change.new, depth + 1, "+ ")


def _key(change: Change, words: Mapping[str, str]) -> str:
    """Return where the words for a change are: those for its detail go first."""
    return change.detail if change.what == "time" and change.detail in words else change.what


def _say(text: str, change: Change) -> str:
    old, new = change.old, change.new
    return text.format(old=old, new=new, detail=change.detail.replace("-", " "))


def _wrapped(text: str, depth: int, mark: str = "") -> Iterator[str]:
    first = _INDENT * depth + mark
    return iter(
        wrap(
            text,
            WIDTH,
            initial_indent=first,
            subsequent_indent=" " * len(first) + ("" if mark else _INDENT),
            break_on_hyphens=False,
            break_long_words=False,
        )
    )
