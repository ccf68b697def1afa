"""The index's files say where each word stands, and stay small."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.pages.search.entry import Entry
from pullcord.pages.search.index import FILE_CHARACTERS, base36, index_files, weights

PLUG = Entry("p.html#step-plug", "Fit a known-good plug", "No spark", "Screw it in by hand.")
COIL = Entry("p.html#step-coil", "Source coil", "No spark", "Measure it. A plug is not needed.")


def arguments(script: str) -> list[object]:
    """Return what a script of the index hands to its function."""
    inner = script[script.index("(") + 1 : script.rindex(")")]
    values = json.loads(f"[{inner}]")
    assert isinstance(values, list)
    return values


def found(entries: list[Entry], word: str) -> dict[int, int]:
    """Return the weight of a word at each entry, read back from the files."""
    for name, script in index_files(entries).items():
        if name.startswith("search-words"):
            for line in str(arguments(script)[1]).splitlines():
                key, places = line.split(" ")
                if key == word:
                    return read_places(places)
    return {}


def read_places(places: str) -> dict[int, int]:
    """Read `step.weight,step.weight` as the browser does."""
    at, weight_at = 0, {}
    for item in places.split(","):
        step, weight = item.split(".")
        at += int(step, 36)
        weight_at[at] = int(weight, 36)
    return weight_at


def test_titles_outrank_text() -> None:
    """A word in a title weighs more than the same word in the text."""
    places = found([COIL, PLUG], "plug")
    assert places[1] > places[0] > 0


def test_every_place_shows_its_page() -> None:
    """A hit carries its link, its own title, the page it is on and the first words."""
    (number, places) = arguments(index_files([PLUG])["search-places-0.js"])
    assert (number, places) == (0, f"{PLUG.href}\t{PLUG.title}\t{PLUG.under}\t{PLUG.text}")


def test_no_text_makes_a_place_more() -> None:
    """A line is a place, and a tab ends one of its four parts, whatever a title holds."""
    entry = Entry("x.html", "One\ttwo\nthree", "a\r\nb\u2028c", "d\te")
    (_, places) = arguments(index_files([entry])["search-places-0.js"])
    assert places == "x.html\tOne two three\ta b c\td e"


def test_hostile_text_cannot_end_the_script() -> None:
    """No text can close the script element or break its line."""
    entry = Entry("x.html", "</script><script>alert(1)</script>", "\u2028", "<!--")
    for script in index_files([entry]).values():
        assert "<" not in script
        assert "\u2028" not in script


@settings(max_examples=40, deadline=None, print_blob=True)
@given(st.lists(st.text("ab1 2-é", max_size=12), min_size=1, max_size=30))
def test_the_files_hold_exactly_the_weights(texts: list[str]) -> None:
    """Reading the files back gives every word's weight at every entry and nothing else."""
    entries = [Entry(f"{n}.html", text, "", text) for n, text in enumerate(texts)]
    read: dict[int, dict[str, int]] = {}
    for name, script in index_files(entries).items():
        if name.startswith("search-words"):
            for line in filter(None, str(arguments(script)[1]).splitlines()):
                word, places = line.split(" ")
                for number, weight in read_places(places).items():
                    read.setdefault(number, {})[word] = weight
    assert read == {n: dict(weights(e)) for n, e in enumerate(entries) if weights(e)}


def test_no_file_grows_without_end() -> None:
    """Words are spread over more files as the library grows."""
    entries = [Entry(f"{n}.html", f"word{n}x", "", "same words here") for n in range(3000)]
    scripts = index_files(entries)
    words = [arguments(s)[1] for name, s in scripts.items() if name.startswith("search-words")]
    lines = [line for text in words for line in str(text).splitlines()]
    longest_line = max(map(len, lines))
    assert len(words) > 1
    assert all(len(str(text)) <= FILE_CHARACTERS + longest_line for text in words)


@pytest.mark.parametrize("number", [0, 1, 35, 36, 1295, 1296, 10**6])
def test_base36_is_what_int_reads(number: int) -> None:
    """The browser's and Python's own reader give the number back."""
    assert int(base36(number), 36) == number
