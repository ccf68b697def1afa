"""A comment allows a rule that is there.

A slip in a rule's name, or a rule that is gone since, would leave the comment standing for nothing.
`pullcord explain` lists every rule.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "unknown-rule"

FAILING = example(
    """\
causes:
  dry-casing:
    title: No water in the pump casing
    remedy: Fill the casing to the filler plug and fit the plug tight.
    odds: 3  # pullcord: allow odds-without-sauce because nobody counted yet
    odds-from: common practice
  air-leak:
    title: Air leak on the suction side
    remedy: Fit a new hose washer and tighten the clamps.
"""
)

MENDED = FAILING.replace(
    "  # pullcord: allow odds-without-sauce because nobody counted yet\n", "\n"
)
