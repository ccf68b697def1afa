"""No text gets lost behind a `#`.

A space and a `#` begin a comment, so `Fit fuse #3 again` would be read as `Fit fuse`, and nobody
would notice. That is why a comment behind a value must look like one: two spaces before the `#` and
one behind it. Text with a `#` in it goes in double quotes.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "lost-text"

FAILING = example(
    """\
title: Pump #3 will not prime
"""
)

MENDED = example(
    """\
title: "Pump #3 will not prime"  # the one by the pond
"""
)
