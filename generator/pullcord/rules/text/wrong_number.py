"""Numbers are digits, and within reason.

Minutes, odds and prices are reckoned with, so they are written in digits alone, with a point and no
unit. A figure far out of range is mostly a slip of the finger.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "wrong-number"

FAILING = example(
    """\
causes:
  dry-casing:
    title: No water in the pump casing
    remedy: Fill the casing to the filler plug and fit the plug tight.
    minutes: five
  air-leak:
    title: Air leak on the suction side
    remedy: Fit a new hose washer and tighten the clamps.
"""
)

MENDED = example(
    """\
causes:
  dry-casing:
    title: No water in the pump casing
    remedy: Fill the casing to the filler plug and fit the plug tight.
    minutes: 5
  air-leak:
    title: Air leak on the suction side
    remedy: Fit a new hose washer and tighten the clamps.
"""
)
