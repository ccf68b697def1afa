"""What must be said is said.

A step needs a title and an instruction, a cause a title and a remedy, and a procedure its name,
title, symptom, start, and whom it is for. Without them the page would have holes in it.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "missing-key"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)

MENDED = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)
