"""Files made to keep a program busy: bounded work, a finding, no traceback."""

from __future__ import annotations

import pytest

from pullcord.model.parse import parse_procedure
from pullcord.source.decode import MOST_BYTES
from pullcord.source.flaw import MOST_FLAWS
from pullcord.source.tree import Tree, read_tree

FULL = MOST_BYTES - 64
BOMBS = {
    "nested brackets": (b"a: " + b"[" * FULL, "too-deep"),
    "nested braces": (b"a: " + b"{b: " * (FULL // 4), "too-deep"),
    "nested dashes": (b"- " * (FULL // 2), "too-deep"),
    "nested question marks": (b"? " * (FULL // 2), "key-not-text"),
    "nested indents": (b"".join(b" " * n + b"a:\n" for n in range(700)), "too-deep"),
    "aliases": (b"a: &a [x, x]\nb: [" + b"*a, " * (FULL // 4) + b"]", "alias"),
    "aliases of aliases": (
        b"a0: &a0 [x]\n"
        + b"".join(b"a%d: &a%d [*a%d, *a%d]\n" % (n, n, n - 1, n - 1) for n in range(1, 5000)),
        "alias",
    ),
    "an alias of itself": (b"a: &a [*a]\n", "alias"),
    "one huge text": (b"a: " + b"x" * FULL, "text-too-long"),
    "one huge quoted text": (b'a: "' + b"x " * (FULL // 2) + b'"', "text-too-long"),
    "one huge block": (b"a: |\n" + b"  x\n" * (FULL // 4), "text-too-long"),
    "one huge key": (b"? " + b"k" * FULL + b"\n: v\n", "text-too-long"),
    "a quote never closed": (b'a: "' + b"\n" * FULL, "yaml-syntax"),
    "many items": (b"a: [" + b"x," * (FULL // 2) + b"]", None),
    "many keys": (b"".join(b"k%d: v\n" % n for n in range(FULL // 11)), None),
    "many duplicate keys": (b"a: b\n" * (FULL // 5), "duplicate-key"),
    "many empty values": (b"".join(b"k%d:\n" % n for n in range(FULL // 9)), "empty-value"),
    "many hashes": (b"a: b #c\n" + b"# d #e\n #f\n" * (FULL // 12), "lost-text"),
    "many tabs": (b"\ta: b\n" * (FULL // 6), "tab-indent"),
    "many anchors": (b"".join(b"k%d: &a b\n" % n for n in range(FULL // 13)), "alias"),
    "many invisible characters": ("a: " + "\u202e" * (FULL // 3), "control-character"),
    "many lines": (b"\n" * FULL, "not-a-mapping"),
    "one byte too many": (b"a: b\n#" + b"x" * MOST_BYTES, "file-too-large"),
    "zeros": (b"\0" * FULL, "control-character"),
}


@pytest.mark.parametrize(("raw", "rule"), BOMBS.values(), ids=BOMBS)
def test_a_bomb_is_one_finding_among_few(raw: bytes | str, rule: str | None) -> None:
    """It is read or refused, with at most a hundred lines to say why; so does the model."""
    tree = read_tree(raw.encode() if isinstance(raw, str) else raw)
    assert isinstance(tree, Tree)
    rules = {flaw.rule for flaw in tree.flaws}
    assert rules >= ({rule} if rule else set())
    assert len(tree.flaws) <= MOST_FLAWS
    flaws = parse_procedure(tree.data)
    assert isinstance(flaws, tuple)
    assert 1 <= len(flaws) <= MOST_FLAWS
