"""What is allowed is found.

A comment that allows what is no longer found says that something is wrong where nothing is, and
would hide the next finding of its kind. It speaks of its own line, or from a line of its own of the
next one, and of the text that begins there; not of what stands further below.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "unused-allow"

FAILING = example(
    """\
# pullcord: allow unused-tool because the same list hangs by the pump
tools:
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

MENDED = FAILING.replace(
    "# pullcord: allow unused-tool because the same list hangs by the pump\n", ""
)
