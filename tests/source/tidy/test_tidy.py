"""The canonical form: the same data, every comment, and nothing left to change."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.finding import Place
from pullcord.source.comments import comments_in
from pullcord.source.compose import compose
from pullcord.source.decode import read_text
from pullcord.source.scalar import WIDTH
from pullcord.source.tidy import TidyError, tidy
from pullcord.source.tidy.texts import LONGEST
from pullcord.source.tree import read_tree
from tests.source.tidy.writing import files

FIRST = ("title", "do", "why")


def order(place: Place, keys: Sequence[str]) -> list[str]:
    """Put some keys first, and leave the rest as they are."""
    return sorted(keys, key=lambda key: FIRST.index(key) if key in FIRST else len(FIRST))


def tidied(text: str) -> str:
    """Return a text in canonical form."""
    return tidy(text.encode(), order).decode()


def comments(text: str) -> list[str]:
    """Return every comment of a text, sorted."""
    read, _ = read_text(text.encode())
    return sorted(words for _, words, _ in comments_in(read, compose(read).spans))


LONG = " ".join(["petrol"] * 30)
FILLED = " ".join(["petrol"] * 14)
assert len(LONG) > LONGEST

CASES = {
    "keys in their order": ("why: x\ndo: y\nb: z\n", "do: y\nwhy: x\nb: z\n"),
    "comments go with their keys": (
        "# about why\nwhy: x  # because\n# about do\ndo: y\n",
        "# about why\n# about do\ndo: y\nwhy: x  # because\n",
    ),
    "comments above the file stay there": (
        "# a file\n\n# about why\nwhy: x\ndo: y\n",
        "# a file\n\n# about why\ndo: y\nwhy: x\n",
    ),
    "a word to us stays with its line": (
        "# pullcord: allow x because y\nwhy: x\ndo: y\n",
        "do: y\n# pullcord: allow x because y\nwhy: x\n",
    ),
    "comments below the file stay there": ("why: x\ndo: y\n# end\n", "do: y\nwhy: x\n# end\n"),
    "a deeper comment ends its block": (
        "b:\n  a: x\n  # the end of b\ndo: y\n",
        "do: y\nb:\n  a: x\n  # the end of b\n",
    ),
    "two spaces before a comment": ("a: 'x' # y\n", "a: 'x'  # y\n"),
    "two spaces a level": (
        "a:\n    b:\n     - c\n     -   d: e\n         f: g\n",
        "a:\n  b:\n    - c\n    - d: e\n      f: g\n",
    ),
    "lists are indented": ("a:\n- b\n- c\n", "a:\n  - b\n  - c\n"),
    "a list in a list": ("a:\n- - b\n  - c\n", "a:\n  - - b\n    - c\n"),
    "an item below its dash": ("a:\n  -\n    b: c\n", "a:\n  - b: c\n"),
    "a comment below a dash": (
        "a:\n  -\n    # c\n    b: c\n",
        "a:\n  -\n    # c\n    b: c\n",
    ),
    "a comment behind a dash": ("a:\n  - # c\n    b: c\n", "a:\n  # c\n  - b: c\n"),
    "blank lines one at a time": ("\n\na: x\n\n\n\nb: y\n\n\n", "a: x\n\nb: y\n"),
    "blank lines in a text stay": (
        "a: |\n   x\n\n\n   y\n\n\nb: y\n",
        "a: |\n  x\n\n\n  y\n\nb: y\n",
    ),
    "a text that keeps its end": ("a: |+\n   x\n\n\nb: y\n", "a: |+\n  x\n\n\nb: y\n"),
    "no blank line becomes part of one": (
        "why: x\n\nb: y\ndo: |+\n   x\n",
        "do: |+\n  x\nwhy: x\n\nb: y\n",
    ),
    "brackets": ("a: [b,c,  d]\nb: {e: f,g: h}\n", "a: [b, c, d]\nb: {e: f, g: h}\n"),
    "brackets over two lines": ("a: [b,\n  c]\n", "a: [b, c]\n"),
    "brackets with a comment inside": ("a: [b,  # c\n  c]\n", "a: [b,  # c\n  c]\n"),
    "keys in brackets": ("a: {why: x, do: y}\n", "a: {do: y, why: x}\n"),
    "brackets that are too long": (
        f"a: {{b: {FILLED}, c: d}}\n",
        f"a:\n  b: {FILLED}\n  c: d\n",
    ),
    "items in brackets that are too long": (
        f"a:\n  - {{b: {FILLED}, c: d}}\n",
        f"a:\n  - b: {FILLED}\n    c: d\n",
    ),
    "quotes stay": ("a: 'x'\nb: \"y\"\n'c': z\n", "a: 'x'\nb: \"y\"\n'c': z\n"),
    "a long line stays": (f"a: {FILLED} tap {FILLED[:50]}\n",) * 2,
    "a line that is too long": (
        f"a: {LONG}  # c\n",
        f"a: >-  # c\n  {FILLED}\n  {FILLED}\n  petrol petrol\n",
    ),
    "an item that is too long": (
        f"a:\n  - '{LONG}'\n",
        f"a:\n  - >-\n    {FILLED[:-7]}\n    {FILLED[:-7]}\n    petrol petrol petrol petrol\n",
    ),
    "a text over two lines": ("a: x\n   y\nb: 'x\n  #y'\n", 'a: x y\nb: "x #y"\n'),
    "a long text over two lines": (
        f"a: {FILLED}\n  petrol\n",
        f"a: >-\n  {FILLED}\n  petrol\n",
    ),
    "a folded text keeps its line breaks": ("a: >-\n    x\n    y\n", "a: >-\n  x\n  y\n"),
    "but not when a line is too long": (
        f"a: >-\n  x\n  {LONG[:120]}\n",
        f"a: >-\n  x {FILLED[:-7]}\n  petrol petrol petrol petrol p\n",
    ),
    "a text of several lines in quotes": ('a: "x\n\n  y"\n', "a: |-\n  x\n  y\n"),
    "a marked beginning and end": ("---\na: x\n...\n", "a: x\n"),
    "another system's line ends": ("\ufeffa: x\r\nb: y\r\n", "a: x\nb: y\n"),
    "no line end": ("a: x", "a: x\n"),
}


@pytest.mark.parametrize(("text", "expected"), CASES.values(), ids=CASES)
def test_the_canonical_form(text: str, expected: str) -> None:
    """Letter by letter, and a second time nothing changes."""
    assert tidied(text) == expected
    assert tidied(expected) == expected


def same(old: object, new: object) -> bool:
    """Whether data is the same, the order of names included, but for the keys put first."""
    if isinstance(old, dict) and isinstance(new, dict):
        keys = order((), list(old))
        return keys == list(new) and all(same(old[key], new[key]) for key in keys)
    if isinstance(old, list) and isinstance(new, list):
        return len(old) == len(new) and all(map(same, old, new))
    return old == new


@settings(max_examples=100, deadline=None, print_blob=True)
@given(text=files())
def test_any_hands_file_keeps_its_data_and_its_comments(text: str) -> None:
    """Whatever the style: nothing is lost, and a second time nothing changes."""
    text = text if text.endswith("\n") else f"{text}\n"
    before = read_tree(text.encode())
    assert before.flaws == (), text
    new = tidied(text)
    after = read_tree(new.encode())
    assert after.flaws == ()
    assert same(before.data, after.data)
    assert comments(new) == comments(text)
    assert tidied(new) == new


@settings(max_examples=100, deadline=None, print_blob=True)
@given(text=files(), where=st.integers(0, 10_000), what=st.sampled_from("\n\t #:-'\"[{|>&x"))
def test_a_damaged_file_is_left_alone_or_kept_whole(text: str, where: int, what: str) -> None:
    """One wrong letter never costs another: it is refused, or nothing is lost."""
    at = where % (len(text) + 1)
    damaged = text[:at] + what + text[at:]
    damaged = damaged if damaged.endswith("\n") else f"{damaged}\n"
    before = read_tree(damaged.encode())
    try:
        new = tidied(damaged)
    except TidyError:
        return
    assert same(before.data, read_tree(new.encode()).data)
    assert comments(new) == comments(damaged)
    assert tidied(new) == new


REFUSED = {
    "a tab": "a:\n\tb: c\n",
    "a key given twice": "a: b\na: c\n",
    "an anchor": "a: &b c\n",
    "nothing": "",
    "a text": "petrol\n",
    "all between braces": "{a: b}\n",
    "a bracket that is never closed": "a: [b\n",
    "another encoding": "a: \udce9\n",
}


@pytest.mark.parametrize("text", REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_read_is_refused(text: str) -> None:
    """It is not for this to mend."""
    with pytest.raises(TidyError):
        tidy(text.encode("utf-8", "surrogateescape"), order)


def test_no_line_is_longer_than_it_must() -> None:
    """But for a value that is written on one line."""
    lines = tidied(f"a: {LONG}\nb:\n  - c: '{LONG}'\n").splitlines()
    assert max(map(len, lines)) <= WIDTH
