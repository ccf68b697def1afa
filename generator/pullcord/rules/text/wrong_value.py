"""A value fits its key.

What stands here is neither a wrong word nor a wrong number, but still cannot be what the key means:
a title with a line break in it, for example.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "wrong-value"

FAILING = example(
    """\
title: "Pump will\\nnot prime"
"""
)

MENDED = example(
    """\
title: Pump will not prime
"""
)
