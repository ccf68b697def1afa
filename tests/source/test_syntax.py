"""What YAML itself refuses is said in plain words, at the place to look at."""

from __future__ import annotations

import pytest
import yaml

from pullcord.source import compose
from pullcord.source.tree import read_tree

CASES = {
    "a colon in a value": ("a: b: c", (1, 5), "a colon and a space inside a value"),
    "a colon without space above": ("a:b\nc: d", (2, 2), "a key with its colon cannot stand here"),
    "a key too deep": ("a: b\n  c: d", (2, 4), "a key with its colon cannot stand here"),
    "a line without colon": ("a: b\nc\n", (2, 1), "this line has no colon"),
    "an open quote": ("a: 'b\nc: d", (1, 4), "this quote is never closed"),
    "an open bracket": ("a: [b\nc: d", (1, 4), "this bracket is never closed"),
    "an open brace": ("a: {b: c\n", (1, 4), "this bracket is never closed"),
    "a lone closing bracket": ("a: ]", (1, 4), "a value is missing here"),
    "an at sign": ("a: @b", (1, 4), "a value cannot begin with this character"),
    "a backquote": ("a: `b`", (1, 4), "a value cannot begin with this character"),
    "an unknown escape": (r'a: "\q"', (1, 5), "a backslash inside double quotes"),
    "half a character": (r'a: "\ud800"', (1, 7), "a backslash inside double quotes"),
    "a key too shallow": ("a:\n   b: c\n  d: e", (3, 3), "this line does not line up"),
    "text behind a quote": ("a: 'b' c", (1, 8), "this line does not line up"),
    "a key in a list": ("- a\nb: c", (2, 1), "this line does not line up"),
    "a list behind its key": ("a: - b", (1, 4), "a list item cannot begin on the same line"),
    "a star alone": ("a: *", (1, 4), "a value that begins with `*`"),
    "an ampersand alone": ("a: & b", (1, 4), "a value that begins with `*`"),
    "text behind a bar": ("a: |b\n  c", (1, 5), "the text behind `|` or `>`"),
    "a directive nobody knows": ("%FOO\na: b", (1, 5), "this does not belong to the document"),
    "text after the end": ("a: b\n...\nfoo", (3, 1), "this does not belong to the document"),
}


@pytest.mark.parametrize(("text", "place", "begins"), CASES.values(), ids=CASES)
def test_a_syntax_error_is_told_in_plain_words(text: str, place, begins: str) -> None:
    """One finding, at its place, without a word of the library's own, with something to do."""
    (flaw,) = read_tree(text.encode()).flaws
    assert flaw.rule == "yaml-syntax"
    assert (flaw.mark.line, flaw.mark.column) == place
    assert flaw.message.startswith(begins)
    assert flaw.mend


@pytest.mark.parametrize(("text", "place", "begins"), CASES.values(), ids=CASES)
def test_the_other_parser_is_understood_too(text, place, begins, monkeypatch) -> None:
    """PyYAML without its C part words things otherwise, but each is known by its words."""
    monkeypatch.setattr(compose, "Loader", yaml.SafeLoader)
    (flaw,) = read_tree(text.encode()).flaws
    assert flaw.rule in ("yaml-syntax", "control-character")
    assert not flaw.message.startswith("this cannot be read")
