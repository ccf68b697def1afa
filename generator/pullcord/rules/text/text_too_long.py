"""Texts stay short.

Text is read at arm's length with dirty hands. A title has room for 120 characters, an instruction
for 1200, and nothing in a file may be longer than 4000. What needs more room is more than one step.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "text-too-long"

FAILING = example(
    """\
title: >-
  Pump will not prime, and neither does the other one that was bought in the same week from the
  same place, which makes one wonder
"""
)

MENDED = example(
    """\
title: Pump will not prime
"""
)
