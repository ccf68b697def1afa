"""Which comments speak to Pullcord, and of which lines."""

from __future__ import annotations

import pytest

from pullcord.source.remarks import read_remarks

SPOKEN_OF = {
    "behind a value": ("a: b  # pullcord: x\nc: d\n", "x", 1, 1),
    "on a line of its own": ("# pullcord: x\na: b\nc: d\n", "x", 2, 2),
    "over other comments and blank lines": ("# pullcord: x\n\n# more\n\na: b\n", "x", 5, 5),
    "above a key with keys below it": ("a:\n  # pullcord: x\n  b:\n    c: d\n", "x", 3, 3),
    "above a text of several lines": ("# pullcord: x\na: >-\n  b\n  c\n\nd: e\n", "x", 2, 4),
    "behind a text's bar": ("a: >-  # pullcord: x\n  b\n  c\nd: e\n", "x", 1, 3),
    "above a quoted text": ("# pullcord: x\na: 'b\n  c'\nd: e\n", "x", 2, 3),
    "below a text block": ("a: |\n  b\n# pullcord: x\nc: d\n", "x", 4, 4),
    "in a list": ("a:\n  - b\n  - c  # pullcord: x\n", "x", 3, 3),
    "at the end of the file": ("a: b\n# pullcord: x\n", "x", 0, 0),
    "in capitals, without spaces": ("a: b  #Pullcord:x\n", "x", 1, 1),
    "with nothing said": ("a: b  # pullcord:\n", "", 1, 1),
    "with other line ends": ("# pullcord: x\r\na: b\r\n", "x", 2, 2),
}
OTHERS = {
    "another comment": "a: b  # about pullcord: x\n",
    "text in a block": "a: |\n  # pullcord: x\n",
    "text in quotes": "a: 'b  # pullcord: x'\n",
    "a key": "pullcord: x\n",
    "a broken file": "a: [b  # pullcord: x\n",
    "another encoding": "\ufeffa: b  # pullcord: x\n".encode("utf-16"),
    "nothing": "",
}


@pytest.mark.parametrize(("text", "said", "first", "last"), SPOKEN_OF.values(), ids=SPOKEN_OF)
def test_the_lines_a_comment_speaks_of(text: str, said: str, first: int, last: int) -> None:
    """Its own line, or the next one with content, with all lines of a text that begins there."""
    (remark,) = read_remarks(text.encode())
    assert (remark.text, remark.first_line, remark.last_line) == (said, first, last)
    where = text.replace("\r\n", "\n").split("\n")[remark.mark.line - 1]
    assert where[remark.mark.column - 1] == "#"


@pytest.mark.parametrize("text", OTHERS.values(), ids=OTHERS)
def test_what_is_no_comment_to_us(text: str | bytes) -> None:
    """Text that only looks like it, and files that cannot be read."""
    assert read_remarks(text if isinstance(text, bytes) else text.encode()) == ()


def test_several_above_one_line() -> None:
    """Comments may stand above one another; each speaks of the line below them all."""
    text = b"# pullcord: x\n# pullcord: y\na: b  # pullcord: z\n"
    assert [(each.text, each.first_line) for each in read_remarks(text)] == [
        ("x", 3),
        ("y", 3),
        ("z", 3),
    ]
