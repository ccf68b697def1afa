"""Only known keys are used.

A key nobody knows is nearly always a known one with a slip in it, and what it says would be lost:
a misspelled `opens: petrol` is a caution box that is not there.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "unknown-key"

FAILING = example(
    """\
title: Pump will not prime
also-sayd: it sucks air
"""
)

MENDED = example(
    """\
title: Pump will not prime
also-said: it sucks air
"""
)
