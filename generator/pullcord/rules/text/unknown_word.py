"""Where only certain words may stand, one of them stands.

What a step opens, makes or fits is said in a few fixed words, because the cautions and the proof
that a procedure is safe are worked out from them.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "unknown-word"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    near: hot-part
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
    near: hot-parts
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)
