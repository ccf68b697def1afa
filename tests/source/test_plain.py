"""Ordinary files are read in one go, and come out as a closer look would give them."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from pullcord.source.plain import read_plain
from pullcord.source.tree import read_data, read_tree
from tests.corpus.test_corpus import CASES
from tests.source.test_bombs import BOMBS

ROOT = Path(__file__).parents[2]
SHIPPED = sorted(path for name in ("procedures", "demo") for path in (ROOT / name).rglob("*.yaml"))

ORDINARY = {
    "keys below keys": ("a:\n  b: c\n", {"a": {"b": "c"}}),
    "lists": ("a: [b, {c: d}]\ne:\n  - f\n", {"a": ["b", {"c": "d"}], "e": ["f"]}),
    "blocks and quotes": (
        "a: |\n  b\nc: 'd'\ne: \"\"\n",
        {"a": "b\n", "c": "d", "e": ""},
    ),
    "comments before the first key": ("# one\n\n#two\na: b\n", {"a": "b"}),
    "what looks like a number": ("a: 012\nno: 1.10\n", {"a": "012", "no": "1.10"}),
    "a document that is marked": ("---\na: b\n...\n", {"a": "b"}),
    "a text": ("just a text\n", "just a text"),
}
UNUSUAL = {
    "nothing": "",
    "a comment behind a value": "a: b  # c\n",
    "a comment behind the keys": "a: b\n# c\n",
    "an empty value": "a:\n",
    "an empty item": "a:\n  -\n",
    "the same key twice": "a: b\na: c\n",
    "keys to merge": "a: b\n<<: {c: d}\n",
    "an anchor": "a: &b c\n",
    "an anchor of keys": "a: &b {c: d}\n",
    "a repetition": "a: [*b]\n",
    "a repetition as a key": "a: b\n*c : d\n",
    "a tag": "a: !b c\n",
    "a tag of a list": "a: !b [c]\n",
    "a list as a key": "? [a]\n: b\n",
    "a character that is not seen": 'a: "\\u202e"\n',
    "two documents": "a: b\n---\nc: d\n",
    "a bracket that is not closed": "a: [b\n",
    "a text that is too long": f"a: {'b' * 4001}\n",
    "a block that is too long": f"a: |\n  {'b' * 4001}\n",
    "too many levels": f"a: {'[' * 12}b{']' * 12}\n",
}


@pytest.mark.parametrize(("text", "data"), ORDINARY.values(), ids=ORDINARY)
def test_an_ordinary_text_is_read_in_one_go(text: str, data: object) -> None:
    """Every scalar is the text that was written."""
    assert read_plain(text) == data


@pytest.mark.parametrize("text", UNUSUAL.values(), ids=UNUSUAL)
def test_anything_else_is_left_to_a_closer_look(text: str) -> None:
    """What may be wrong is not judged here."""
    assert read_plain(text) is None


@pytest.mark.parametrize("case", [*CASES, *SHIPPED], ids=lambda case: case.stem)
def test_both_ways_of_reading_say_the_same(case: Path) -> None:
    """A file has the same data and flaws, whoever reads it, broken or shipped."""
    same(case.read_bytes())


@pytest.mark.parametrize("raw", [raw for raw, _ in BOMBS.values()], ids=BOMBS)
def test_both_ways_say_the_same_of_a_bomb(raw: bytes | str) -> None:
    """What is made to be slow or large is taken by neither for an ordinary file."""
    same(raw.encode() if isinstance(raw, str) else raw)


def same(raw: bytes) -> None:
    """Read a file in both ways and compare what they say."""
    assert replace(read_data(raw), root=None) == replace(read_tree(raw), root=None)
