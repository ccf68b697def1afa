"""Each part of a page is found under its own heading."""

from __future__ import annotations

import pytest

from pullcord.pages.search.sections import entries_of

PAGE = """
<h1>No spark</h1><p>It spins.</p>
<section id="step-plug"><h3>Fit a plug</h3>
  <aside data-search-exclude><p>WARNING high voltage<br>keep off</p></aside>
  <p>Screw it in &amp; look.</p><svg><text>drawn words</text></svg></section>
<section id="step-coil"><h3>Coil</h3><p>12<b>V</b> <img alt="no"> and <i>0.7 mm</p></section>
<p>after</p>
"""
HEADINGS = {"step-plug": "Fit a plug", "step-coil": "Coil"}
FOUND = {entry.href: entry for entry in entries_of("p.html", "No spark", HEADINGS, PAGE)}

HOLDS = [
    ("p.html", "It spins."),
    ("p.html#step-plug", "Screw it in & look."),
    ("p.html#step-coil", "12 V and 0.7 mm after"),
]


@pytest.mark.parametrize(("href", "text"), HOLDS, ids=[href for href, _ in HOLDS])
def test_text_belongs_to_the_heading_above_it(href: str, text: str) -> None:
    """Cautions that stand on many steps and the words in drawings give no hits of their own."""
    assert FOUND[href].text == text


def test_a_hit_names_its_page() -> None:
    """An entry below the page's own knows the page's title."""
    assert [(e.title, e.under) for e in FOUND.values()] == [
        ("No spark", ""),
        ("Fit a plug", "No spark"),
        ("Coil", "No spark"),
    ]
