"""Text, lists and blocks stand where they belong.

A title is a piece of text, `before` is a list, `steps` is a block of keys. Where one stands in
place of another it is mostly the indentation that went wrong.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "wrong-shape"

FAILING = example(
    """\
title:
  - Pump will not prime
"""
)

MENDED = example(
    """\
title: Pump will not prime
"""
)
