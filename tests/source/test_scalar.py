"""One text as YAML: it reads back as it was, by our reader and by another's."""

from __future__ import annotations

from io import StringIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ruamel.yaml import YAML

from pullcord.source.decode import UNSEEN
from pullcord.source.scalar import WIDTH, write_scalar, write_value
from pullcord.source.tree import read_tree

TEXTS = st.one_of(
    st.text(st.characters(exclude_categories=("Cs",)), max_size=300),
    st.text(st.sampled_from("ab 1:#-?,[]{}&*!|>'\"%@`\\\n\t~=<.é€\u00a0"), max_size=40),
    st.lists(
        st.sampled_from(["no", "#3", "-", "a:", "b", "'x'", '"y"', "petrol", "*z"]), max_size=60
    ).map(" ".join),
).filter(lambda text: not UNSEEN.search(text))


def in_a_file(text: str) -> str:
    """Return a file that holds a text behind a key."""
    lines = write_value(text, 0, len("a: "))
    return "\n".join([f"a: {lines[0]}", *lines[1:], "b: end", ""])


@settings(max_examples=100, deadline=None, print_blob=True)
@given(text=TEXTS)
def test_a_value_reads_back_as_it_was(text: str) -> None:
    """Whatever is in it, and without a flaw; another library of YAML reads the same."""
    tree = read_tree(in_a_file(text).encode())
    assert (tree.flaws, tree.data) == ((), {"a": text, "b": "end"})
    assert YAML(typ="safe", pure=True).load(StringIO(in_a_file(text))) == {"a": text, "b": "end"}


@settings(max_examples=100, deadline=None, print_blob=True)
@given(text=TEXTS)
def test_a_text_between_brackets_reads_back_as_it_was(text: str) -> None:
    """On one line, whatever is in it."""
    line = f"a: [{write_scalar(text)}, {{{write_scalar(text)}: b}}]\n"
    tree = read_tree(line.encode())
    assert (tree.flaws, tree.data) == ((), {"a": [text, {text: "b"}]})
    assert line.count("\n") == 1


PLAINEST = {
    "words": ("Cleaned the tank", ["Cleaned the tank"]),
    "a comma": ("dry, no smell", ["dry, no smell"]),
    "no": ("no", ["no"]),
    "a second colon": ("Tank: clean", ['"Tank: clean"']),
    "a comment": ("Fuse #3", ['"Fuse #3"']),
    "a number": ("12", ['"12"']),
    "a day": ("2026-03-01", ['"2026-03-01"']),
    "true": ("true", ['"true"']),
    "two lines": ("Tank clean.\nTap clean.", ["|-", "  Tank clean.", "  Tap clean."]),
    "spaces at the end": ("clean ", ['"clean "']),
}


@pytest.mark.parametrize(("text", "lines"), PLAINEST.values(), ids=PLAINEST)
def test_the_plainest_form_is_taken(text: str, lines: list[str]) -> None:
    """No quotes where none are needed."""
    assert write_value(text, 0, 3) == lines


def test_a_long_text_goes_on_in_the_next_line() -> None:
    """No line is longer than it may be, and none is shorter than it must."""
    text = " ".join(["petrol"] * 60)
    first, *lines = write_value(text, 4, 10)
    assert first == ">-"
    assert max(map(len, lines)) <= WIDTH
    assert all(len(line) > WIDTH - len(" petrol") for line in lines[:-1])
