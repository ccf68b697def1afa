"""There are no invisible characters in a file.

They come along when text is pasted, they change what is shown or break the page, and nobody can see
them to take them out. Some even show a line in another order than it is read.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "control-character"

FAILING = example(
    """\
title: Pump will not\x07 prime
"""
)

MENDED = example(
    """\
title: Pump will not prime
"""
)
