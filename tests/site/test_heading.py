"""Headings and anchors of a finished page."""

from __future__ import annotations

from dataclasses import dataclass, field

from pullcord.pages.page import Heading
from pullcord.site.heading import anchor_ids, link_tree


@dataclass
class Entry:
    """An entry of a table of contents."""

    title: str
    id: str
    level: int
    children: list[Entry] = field(default_factory=list)


def test_headings_become_links() -> None:
    """The tree keeps its shape, and a title that looks like HTML is text."""
    below = Heading("step-a", "Gap > 0.6 mm & <b>", 2)
    headings = (Heading("top", "No spark", 1, (below,)), Heading("end", "End", 1))
    assert link_tree(headings, Entry) == [
        Entry("No spark", "top", 1, [Entry("Gap &gt; 0.6 mm &amp; &lt;b&gt;", "step-a", 2)]),
        Entry("End", "end", 1),
    ]


def test_anchors() -> None:
    """Every id counts, whatever element carries it; data-id does not."""
    html = '<h1 id="top">x</h1><g class="a" id="n-1"></g><p data-id="no"></p>'
    assert anchor_ids(html) == {"top", "n-1"}
