"""Names are made of small letters, digits and single hyphens.

Names become addresses of pages and steps, and parts of file names. They must work on every tablet
and every disk, and stay the same when a title is reworded.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "bad-name"

FAILING = example(
    """\
procedure: No Prime
"""
)

MENDED = example(
    """\
procedure: no-prime
"""
)
