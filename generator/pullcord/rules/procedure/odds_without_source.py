"""Odds say where they come from.

How often it is this cause rather than that one decides what is checked first. A reader may trust a
count from a shop's own log more than a guess, so say which it is: a named source, the shop's own
log, or `common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example

ID = "odds-without-source"

FAILING = example(
    """\
causes:
  dry-casing:
    title: No water in the pump casing
    remedy: Fill the casing to the filler plug and fit the plug tight.
    odds: 6
  air-leak:
    title: Air leak on the suction side
    remedy: Fit a new hose washer and tighten the clamps.
"""
)

MENDED = FAILING.replace("odds: 6", "odds: 6\n    odds-from: common practice")


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every cause with odds from nowhere."""
    for name, cause in procedure.causes.items():
        if cause.odds is not None and cause.odds_from is None:
            yield Flaw(
                ("causes", name, "odds"),
                f"cause `{name}` does not say where its odds come from",
                "add `odds-from:`, for instance `common practice`",
            )
