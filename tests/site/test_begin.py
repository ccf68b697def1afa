"""The first version of a file: any words are written as they are."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.finding import Finding
from pullcord.model.procedure import Library, Procedure
from pullcord.site.begin import (
    BeginError,
    DraftError,
    as_name,
    check_draft,
    check_name,
    render_start,
)
from pullcord.source.decode import UNSEEN
from pullcord.source.tree import read_tree

TEXT = st.text(st.characters(exclude_categories=("Cs",)), max_size=60) | st.text(
    st.sampled_from("ab1:#-?,[]{}&*!|>'\"%@`\\ \n\t~=.é{{%"), max_size=30
)
EMPTY = Library(procedures={})


@settings(max_examples=100, deadline=None, print_blob=True)
@given(title=TEXT, symptom=TEXT)
def test_any_words_are_written_as_they_are_or_refused(title: str, symptom: str) -> None:
    """Nothing in an answer becomes a key, a comment or a template."""
    text = render_start("procedure.yaml", {"name": "a", "title": title, "symptom": symptom})
    found = findings(text)
    title, symptom = title.strip(), symptom.strip()
    is_sound = not UNSEEN.search(title + symptom) and title and symptom and "\n" not in title
    assert bool(found) is not bool(is_sound)
    if is_sound:
        tree = read_tree(text.encode())
        assert isinstance(tree.data, dict)
        assert (tree.flaws, tree.data["title"], tree.data["symptom"]) == ((), title, symptom)


def findings(text: str) -> tuple[Finding, ...]:
    """Return what is wrong with a procedure."""
    try:
        check_draft(Path("a.yaml"), text.encode(), Procedure, EMPTY)
    except DraftError as error:
        return error.findings
    return ()


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("Water pump", "water-pump"),
        ("  2 stroke: saw!", "stroke-saw"),
        ("é", ""),
        ("x" * 60, "x" * 48),
        ("a" * 47 + " b", "a" * 47),
    ],
)
def test_words_become_a_name(words: str, name: str) -> None:
    """The nearest one, and one that a file can bear."""
    assert as_name(words) == name
    if name:
        check_name(name)


@pytest.mark.parametrize("name", ["", "A", "a--b", "-a", "a b", "../a", "a.b", "con", "lpt1", "é"])
def test_what_is_no_name(name: str) -> None:
    """It is told before anything is written."""
    with pytest.raises(BeginError):
        check_name(name)
