"""Errors, and whatever is about safety, cannot be allowed.

An error stops the build because a page made from the file would leave its reader stranded or
misled. What is about safety may hurt somebody, and no reason in a comment takes that away: mend it,
or take the step out.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "refused-allow"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    # pullcord: allow near-moving-machine because the belt turns slowly
    near: moving-parts
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)

MENDED = FAILING.replace(
    "    # pullcord: allow near-moving-machine because the belt turns slowly\n", ""
)
