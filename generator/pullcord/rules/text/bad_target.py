"""An answer says where to go next.

It leads to `step NAME` or `cause NAME` of the same procedure, to another `procedure NAME`, or it is
`done`: then nothing is wrong any more and the procedure ends.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "bad-target"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    ask: Is the casing full?
    answers:
      full: air-leak
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
