"""A comment to Pullcord says what it allows.

A comment that begins with `pullcord:` allows a finding, and has one form:
`# pullcord: allow RULE because REASON`. It stands behind the line the finding is about, or on a
line of its own right above it, and names one rule. In any other form it would be passed over, and
whoever wrote it would think that something is settled.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "unreadable-allow"

FAILING = example(
    """\
tools:
  # pullcord: ignore this
  bucket:
    title: A bucket
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water. Pour it in from the bucket.
    needs: bucket
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)

MENDED = FAILING.replace("  # pullcord: ignore this\n", "")
