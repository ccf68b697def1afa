"""A key stands only once in the same place.

When a key is written twice, usually after copying a block, one of the two values would win without
a word and the other would be lost.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "duplicate-key"

FAILING = example(
    """\
title: Pump will not prime
title: Pump will not start
"""
)

MENDED = example(
    """\
title: Pump will not prime
"""
)
