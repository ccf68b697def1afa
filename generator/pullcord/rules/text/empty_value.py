"""Every key that is written has a value.

A key with nothing behind it is a thought that was not finished. Keys that are not needed are left
out.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "empty-value"

FAILING = example(
    """\
title:
"""
)

MENDED = example(
    """\
title: Pump will not prime
"""
)
