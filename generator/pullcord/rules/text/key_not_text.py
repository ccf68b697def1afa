"""Keys are plain text.

YAML lets a list or a block stand where a key should be. That is hardly ever meant: usually a value
that begins with a bracket lacks its quotes.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "key-not-text"

FAILING = example(
    """\
title: Pump will not prime
? [also, said]
: it sucks air
"""
)

MENDED = example(
    """\
title: Pump will not prime
also-said: it sucks air
"""
)
