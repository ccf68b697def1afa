"""Values carry no tags.

A word that begins with `!` tells YAML to make something other than text of a value. Here every
value is the text that was written, so a tag has no use, and text that begins with `!` needs quotes.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "tag"

FAILING = example(
    """\
title: !important Pump will not prime
"""
)

MENDED = example(
    """\
title: "!important: pump will not prime"
"""
)
