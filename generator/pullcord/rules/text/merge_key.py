"""Keys are not merged in from elsewhere.

`<<` copies the keys of another block, and what a step then says can no longer be seen where it
stands. Write the keys out; a caution forgotten in a copy is found by the other rules.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "merge-key"

FAILING = example(
    """\
tools:
  bucket:
    title: A bucket
    <<: more
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    needs: bucket
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)

MENDED = example(
    """\
tools:
  bucket:
    title: A bucket
    instead: Any clean can
steps:
  casing:
    title: Water in the casing
    do: Take out the filler plug and look for water.
    needs: bucket
    ask: Is the casing full?
    answers:
      full: cause air-leak
      not full: cause dry-casing
"""
)
