"""New items in a list: every byte of a hand's stays, and the data is the old with the new."""

from __future__ import annotations

import pytest

from pullcord.source.append import NewItem, NoPlaceError, add_items
from pullcord.source.item import Figure
from pullcord.source.tree import read_tree

NEW = {"date": Figure("2026-03-09"), "did": "Cleaned"}
BLOCK = "  - date: 2026-03-09\n    did: Cleaned\n"
HEAD = "job: a\n"


CASES = {
    "at the end": (
        HEAD + "log:\n  - did: x\n",
        HEAD + "log:\n  - did: x\n" + BLOCK,
    ),
    "no line end at the end": (
        HEAD + "log:\n  - did: x",
        HEAD + "log:\n  - did: x\n" + BLOCK,
    ),
    "blank lines at the end stay there": (
        HEAD + "log:\n  - did: x\n\n\n",
        HEAD + "log:\n  - did: x\n" + BLOCK + "\n\n",
    ),
    "the list is not the last key": (
        "log:\n  - did: x\n\n# what it may cost\njob: a\n",
        "log:\n  - did: x\n" + BLOCK + "\n# what it may cost\njob: a\n",
    ),
    "a comment behind a value and one below it are the item's": (
        HEAD + "log:\n  - did: x  # twice\n    # the plug was black\n  # next time: the tap\n",
        HEAD
        + "log:\n  - did: x  # twice\n    # the plug was black\n"
        + BLOCK
        + "  # next time: the tap\n",
    ),
    "no indent": (
        HEAD + "log:\n- did: x\n  minutes: 3\n",
        HEAD + "log:\n- did: x\n  minutes: 3\n- date: 2026-03-09\n  did: Cleaned\n",
    ),
    "a deeper indent, and the dash on a line of its own": (
        HEAD + "log:\n      -\n        did: x\n",
        HEAD + "log:\n      -\n        did: x\n      - date: 2026-03-09\n        did: Cleaned\n",
    ),
    "all keys indented": (
        "  job: a\n  log:\n    - did: x\n",
        "  job: a\n  log:\n    - did: x\n    - date: 2026-03-09\n      did: Cleaned\n",
    ),
    "blank lines between items": (
        HEAD + "log:\n  - did: x\n\n  - did: y\n",
        HEAD + "log:\n  - did: x\n\n  - did: y\n\n" + BLOCK,
    ),
    "a folded text is last": (
        HEAD + "log:\n  - did: >-\n      x\n      y\n\n\nmost: 3\n",
        HEAD + "log:\n  - did: >-\n      x\n      y\n" + BLOCK + "\n\nmost: 3\n",
    ),
    "a text that keeps its blank lines": (
        HEAD + "log:\n  - did: |+\n      x\n\nmost: 3\n",
        HEAD + "log:\n  - did: |+\n      x\n\n" + BLOCK + "most: 3\n",
    ),
    "quotes over two lines": (
        HEAD + 'log:\n  - did: "x\n      y"\nmost: 3\n',
        HEAD + 'log:\n  - did: "x\n      y"\n' + BLOCK + "most: 3\n",
    ),
    "an item between braces": (
        HEAD + "log:\n  - {did: x,\n     minutes: 3}\nmost: 3\n",
        HEAD + "log:\n  - {did: x,\n     minutes: 3}\n" + BLOCK + "most: 3\n",
    ),
    "an empty list": (
        HEAD + "log: []  # nothing yet\nmost: 3\n",
        HEAD + "log:  # nothing yet\n" + BLOCK + "most: 3\n",
    ),
    "an empty list with a space": (HEAD + "log: [ ]", HEAD + "log:\n" + BLOCK),
    "nothing behind the key": (
        HEAD + "log:  # to come\nmost: 3\n",
        HEAD + "log:  # to come\n" + BLOCK + "most: 3\n",
    ),
    "nothing behind the last key": (HEAD + "log:", HEAD + "log:\n" + BLOCK),
    "no such key": (HEAD + "# the end\n", HEAD + "# the end\nlog:\n" + BLOCK),
    "no such key, and a marked end": (
        "---\njob: a\nmost: 3\n...\n",
        "---\njob: a\nmost: 3\nlog:\n" + BLOCK + "...\n",
    ),
    "between brackets": (
        HEAD + "log: [{did: x}]\n",
        HEAD + "log: [{did: x},\n  {date: 2026-03-09, did: Cleaned}]\n",
    ),
    "between brackets with a comma at the end": (
        HEAD + "log: [\n  {did: x},  # one\n]\n",
        HEAD + "log: [\n  {did: x},\n  {date: 2026-03-09, did: Cleaned},  # one\n]\n",
    ),
    "between brackets with a comment only": (
        HEAD + "log: [\n  # none\n]\n",
        HEAD + "log: [\n  {date: 2026-03-09, did: Cleaned}\n  \n  # none\n]\n",
    ),
}


def add_last(raw: bytes) -> bytes:
    """Add one item at the end."""
    data = read_tree(raw).data
    old = data.get("log", []) if isinstance(data, dict) else []
    return add_items(raw, "log", [NewItem(len(old), NEW)])


@pytest.mark.parametrize(("old", "new"), CASES.values(), ids=CASES)
def test_an_item_is_put_where_it_belongs(old: str, new: str) -> None:
    """The whole new text, letter by letter."""
    assert add_last(old.encode()).decode() == new


@pytest.mark.parametrize("end", ["\r\n", "\r"], ids=["CRLF", "CR"])
@pytest.mark.parametrize("mark", ["", "\ufeff"], ids=["no mark", "byte order mark"])
@pytest.mark.parametrize(("old", "new"), CASES.values(), ids=CASES)
def test_line_ends_and_mark_stay(old: str, new: str, mark: str, end: str) -> None:
    """A file from another system keeps its ways; one of a single line has no way of its own."""
    written = (mark + old.replace("\n", end)).encode()
    expected = mark + new.replace("\n", end)
    assert "\n" in old
    assert add_last(written).decode() == expected


@pytest.mark.parametrize("old", [old for old, _ in CASES.values()], ids=list(CASES))
def test_the_data_is_the_old_with_the_new(old: str) -> None:
    """Nothing else has changed for whoever reads the file."""
    before = read_tree(old.encode()).data
    tree = read_tree(add_last(old.encode()))
    assert isinstance(before, dict)
    assert isinstance(tree.data, dict)
    *earlier, last = tree.data["log"]
    assert tree.flaws == ()
    assert last == {"date": "2026-03-09", "did": "Cleaned"}
    assert {**tree.data, "log": earlier} == {"log": [], **before}


def numbered(*places: int) -> list[NewItem]:
    """Return items that say the number of their place."""
    return [NewItem(place, {"did": f"new {place}"}) for place in places]


AMID = {
    "block": "log:\n  # one\n  - did: x\n  # two\n  - did: y\nmost: 3\n",
    "gaps": "log:\n  - did: x\n\n  - did: y\n\nmost: 3\n",
    "brackets": "log: [{did: x}, {did: y}]\n",
}


@pytest.mark.parametrize("old", AMID.values(), ids=AMID)
def test_items_go_between_others(old: str) -> None:
    """In the order of their places, those of one place in the order given."""
    new = add_items(old.encode(), "log", numbered(0, 1, 1, 2))
    tree = read_tree(new)
    assert isinstance(tree.data, dict)
    said = [entry["did"] for entry in tree.data["log"]]
    assert said == ["new 0", "x", "new 1", "new 1", "y", "new 2"]
    assert tree.flaws == ()


def test_comments_between_items_stay_above_theirs() -> None:
    """What is said about an item is not said about a new one."""
    new = add_items(AMID["block"].encode(), "log", numbered(0, 1)).decode()
    assert new == (
        "log:\n  - did: new 0\n  # one\n  - did: x\n  - did: new 1\n  # two\n  - did: y\nmost: 3\n"
    )


NO_PLACE = {
    "all between braces": "{job: a, log: []}\n",
    "a text": "job: a\nlog: none yet\n",
    "keys": "job: a\nlog:\n  did: x\n",
    "an empty file": "",
}


@pytest.mark.parametrize("old", NO_PLACE.values(), ids=NO_PLACE)
def test_where_there_is_no_place(old: str) -> None:
    """It says so, and how to mend it."""
    with pytest.raises(NoPlaceError, match=r"write one key a line|begin each item with `- `"):
        add_last(old.encode())
