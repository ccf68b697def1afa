"""Nothing is nested deeper than twelve levels.

No file of ours needs half of that. A file that goes deeper was made to keep a program busy, or lost
its closing brackets.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "too-deep"

FAILING = example(
    """\
title: [[[[[[[[[[[[[deep]]]]]]]]]]]]]
"""
)

MENDED = example(
    """\
title: Pump will not prime
"""
)
