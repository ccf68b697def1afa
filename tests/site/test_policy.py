"""Which scripts a page says may run in it."""

from __future__ import annotations

import re

from pullcord.site.policy import inline_scripts, with_policy

PAGE = """<!doctype html><html><head><meta charset="utf-8"><title>T</title>
<script>alert('Hello, world.');</script></head><body><article>words
<script type="application/json">{"a": 1}</script><script>slipped in</script></article>
<script src="a.js"></script></body></html>"""
CONTENT = '<script type="application/json">{"a": 1}</script><script>slipped in</script>'
EXAMPLE = "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='"
"""Of `alert('Hello, world.');`, as W3C's Content Security Policy Level 3 gives it (from memory)."""


def test_data_and_files_are_no_inline_scripts() -> None:
    """Only what would run where it stands is told of."""
    assert inline_scripts(PAGE) == ("alert('Hello, world.');", "slipped in")


def test_what_stands_in_the_content_is_not_let_through() -> None:
    """A script that came in through a file is none of the theme's."""
    assert inline_scripts(PAGE, CONTENT) == ("alert('Hello, world.');",)


def test_the_hash_is_that_of_the_standard() -> None:
    """The same text has the hash of the standard's own example."""
    assert EXAMPLE in with_policy(PAGE, inline_scripts(PAGE, CONTENT)).replace("&#x27;", "'")


def test_the_policy_stands_before_any_script() -> None:
    """It holds for what comes after it only."""
    html = with_policy(PAGE, ())
    assert html.index("Content-Security-Policy") < html.index("<script")
    assert re.sub("<meta http-equiv[^>]*>", "", html) == PAGE


def test_nothing_is_asked_of_others() -> None:
    """No address, no wildcard, no unsafe script."""
    policy = with_policy(PAGE, ("x",)).replace("&#x27;", "'")
    meta = re.search("<meta http-equiv[^>]*>", policy)
    assert meta
    assert "http:" not in meta[0]
    assert "*" not in meta[0]
    (scripts,) = re.findall("script-src ([^;]*)", meta[0])
    assert "unsafe" not in scripts
    assert "object-src 'none'" in meta[0]


def test_a_document_without_a_head_is_left_alone() -> None:
    """There is nowhere to say it."""
    assert with_policy("<p>words", ("x",)) == "<p>words"
