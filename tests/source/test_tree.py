"""Reading a file: what was written stays what was written, and everything knows its place."""

from __future__ import annotations

import pytest
import yaml

from pullcord.finding import Flaw
from pullcord.source import compose
from pullcord.source.tree import find_mark, read_tree

WRITTEN = [
    "no", "yes", "on", "off", "y", "true", "False", "null", "~", "012", "0o12", "0x1F", "12:30",
    "1.10", "1_000", "1e3", ".inf", ".nan", "2026-01-01", "=", "+1",
]  # fmt: skip
"""YAML 1.1 turns each of these but a few into something else (yaml.org/type); YAML 1.2's core
schema still does so for some. Here all are text."""


@pytest.mark.parametrize("written", WRITTEN)
def test_a_scalar_is_the_text_that_was_written(written: str) -> None:
    """No value and no key turns into a truth value, a number, a date or nothing."""
    tree = read_tree(f"a: {written}\n{written}: b\nc: [{written}]\n".encode())
    assert tree.flaws == ()
    assert tree.data == {"a": written, written: "b", "c": [written]}


def test_text_in_any_style_reads_as_a_plain_yaml_reader_reads_it() -> None:
    """Quotes, blocks and folding mean what they mean everywhere."""
    text = (
        "a: plain text\n  over two lines\nb: 'it''s'\nc: \"tab\\tand \\u03a9\"\n"
        "d: |\n  kept\n    as is\ne: >-\n  folded\n  here\n\n  there\n"
        "f: {g: [h, i], j: {}}\nk: []\n"
    )
    assert read_tree(text.encode()).data == yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506


PLACES = {
    "a value": (Flaw(("steps", "coil", "do"), ""), (4, 9)),
    "a key": (Flaw(("steps", "coil", "do"), "", is_key=True), (4, 5)),
    "a block, by its key": (Flaw(("steps", "coil"), ""), (3, 3)),
    "a list, by its key": (Flaw(("steps", "coil", "needs"), ""), (6, 5)),
    "a list item": (Flaw(("steps", "coil", "needs", 1), ""), (6, 20)),
    "a word of a value": (Flaw(("steps", "coil", "do"), "", word="Ω"), (5, 13)),
    "a word that is not there": (Flaw(("steps", "coil", "do"), "", word="zebra"), (4, 9)),
    "a key that is missing": (Flaw(("steps", "coil", "title"), ""), (3, 3)),
    "an item of what is no list": (Flaw(("title", 0), ""), (1, 8)),
    "nothing known at all": (Flaw(("zebra",), ""), (1, 1)),
    "the whole file": (Flaw((), ""), (1, 1)),
}


@pytest.mark.parametrize(("flaw", "place"), PLACES.values(), ids=PLACES)
def test_a_flaw_points_at(flaw: Flaw, place: tuple[int, int]) -> None:
    """The line and column an editor jumps to, counted from 1."""
    text = (
        "title: é and a title\n"
        "steps:\n"
        "  coil:\n"
        "    do: Measure until\n"
        "      it is Ω wide.\n"
        "    needs: [meter, lamp]\n"
    )
    mark = find_mark(read_tree(text.encode()), flaw)
    assert (mark.line, mark.column) == place


def test_line_ends_and_byte_order_mark_do_not_matter() -> None:
    """A file saved on another system reads the same."""
    text = "a: b\nc:\n  - d\n  - e f\n"
    plain = read_tree(text.encode())
    for end, mark in (("\r\n", b""), ("\r", b""), ("\n", b"\xef\xbb\xbf")):
        other = read_tree(mark + text.replace("\n", end).encode())
        assert (other.data, other.root, other.flaws) == (plain.data, plain.root, ())


@pytest.mark.parametrize("name", ["SafeLoader", "CSafeLoader"])
def test_both_parsers_see_the_same(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where PyYAML was built without its C part, the slower one finds the same things."""
    monkeypatch.setattr(compose, "Loader", getattr(yaml, name))
    tree = read_tree(b'a: [x, y]\nb:\nc: "q" # z\nc: *x\nd: one #2\ne: |\n  text # kept\n')
    assert tree.data == {"a": ["x", "y"], "c": "q", "d": "one", "e": "text # kept\n"}
    assert [(flaw.mark.line, flaw.mark.column, flaw.rule) for flaw in tree.flaws] == [
        (2, 3, "empty-value"),
        (4, 1, "duplicate-key"),
        (4, 4, "alias"),
        (5, 8, "lost-text"),
    ]


def test_what_was_left_out_is_known() -> None:
    """Nobody complains that something is missing which a flaw above has taken away."""
    tree = read_tree(b"a: *x\nb: [c, *x]\nd: {<<: *x, e: f}\ng:\n")
    assert tree.data == {"b": ["c", ""], "d": {"e": "f"}}
    assert tree.spoilt == {("a",), ("b", 1), ("d",), ("g",)}
