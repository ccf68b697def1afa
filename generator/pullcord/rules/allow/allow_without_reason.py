"""What is allowed is allowed for a reason.

Whoever reads the file in two years must be able to tell whether the reason still holds. Write it
behind `because`, in the words you would use to somebody at the bench.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "allow-without-reason"

FAILING = example(
    """\
tools:
  # pullcord: allow unused-tool
  bucket:
    title: A bucket
"""
)

MENDED = FAILING.replace("unused-tool", "unused-tool because the list by the pump names it too")
