"""No text is taken for a comment without a word; a comment that looks like one is let be."""

from __future__ import annotations

import pytest

from pullcord.source.tree import read_tree

LOST = {
    "one space before": ("a: fuse #3 again", 1, 9, "#3 again"),
    "one space before, one after": ("a: fuse # again", 1, 9, "#again"),
    "no space after": ("a: fuse  #3", 1, 10, "#3"),
    "at the start of a value": ("a: #3 jet", 1, 4, "#3 jet"),
    "in a list": ("a:\n  - fuse #3", 2, 10, "#3"),
    "in brackets": ("a: [fuse #3\n  ]", 1, 10, "#3"),
    "behind a quote": ("a: 'fuse' #3", 1, 11, "#3"),
    "on the next line of a text": ("a: fuse\n  #3 again", 2, 3, "#3 again"),
    "on the third line of a text": ("a: fuse\n  or\n  #3", 3, 3, "#3"),
    "on the next line of a list item": ("a:\n  - fuse\n    #3", 3, 5, "#3"),
    "after a hash in quotes": ("a: 'fuse #3'\nb: c #4", 2, 6, "#4"),
    "behind the bar of a block": ("a: | #3\n  b", 1, 6, "#3"),
}
KEPT = {
    "a line of its own": "# a\na: b\n  # c\nd: e\n#f: g\n",
    "two spaces before, one after": "a: b  # c\n",
    "a tab before": "a: b\t# c\n",
    "behind a key": "a: # c\n  b: d\n",
    "behind a quote": "a: 'b' # c\n",
    "behind a bracket": "a: [b] # c\n",
    "a row of hashes": "a: b  ######\n",
    "nothing behind it": "a: b  #\n",
    "no space before": "a: b#3\n",
    "in single quotes": "a: 'b #3'\n",
    "in double quotes": 'a: "b #3\n  #4"\n',
    "in a block": "a: |\n  b #3\n  #4\nc: >-\n  d #5\n",
    "in a quoted key": "'a #3': b\n",
    "a commented key below a value": "a:\n  b: c\n  #d: e\n",
    "a commented list item": "a:\n  - b\n  #- c\n",
}


@pytest.mark.parametrize(("text", "line", "column", "lost"), LOST.values(), ids=LOST)
def test_lost_text_is_named(text: str, line: int, column: int, lost: str) -> None:
    """The finding stands at the hash and says what would be gone."""
    flaws = [flaw for flaw in read_tree(text.encode()).flaws if flaw.rule == "lost-text"]
    assert [(flaw.mark.line, flaw.mark.column) for flaw in flaws] == [(line, column)]
    assert f"`{lost}`" in flaws[0].message


@pytest.mark.parametrize("text", KEPT.values(), ids=KEPT)
def test_a_comment_is_let_be(text: str) -> None:
    """Whoever writes comments as they should look is not bothered."""
    assert [flaw for flaw in read_tree(text.encode()).flaws if flaw.rule == "lost-text"] == []
