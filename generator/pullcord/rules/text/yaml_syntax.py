"""The file can be read as YAML.

YAML shows what belongs to what by indentation and by a few characters: a colon and a space end a
key, a dash and a space begin a list item, quotes and brackets come in pairs. Where that goes wrong
nobody can tell what the lines below mean, so reading stops there; other mistakes further down show
up once this one is mended.

The commonest one is a colon inside a sentence. Put such a value in double quotes.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "yaml-syntax"

FAILING = example(
    """\
title: Pump: will not prime
"""
)

MENDED = example(
    """\
title: "Pump: will not prime"
"""
)
