"""What a step or a cause is filled in from is in a shared file.

`as: ground-check` fills a step in from the step `ground-check` of a file that begins with
`shared:`. If the name is misspelt there is nothing to fill in from. The shared steps, causes and
tools that come along are listed on the page of what is shared.
"""

from __future__ import annotations

from pullcord.rules.example import example

ID = "unknown-piece"

_SHARED = """\
shared: bench
causes:
  suction-leak:
    title: Suction hose draws air
    remedy: Fit a new suction hose and tighten both clamps.
"""


def _procedure(name: str, piece: str) -> str:
    return example(f"""\
procedure: {name}
causes:
  dry-casing:
    title: No water in the pump casing
    remedy: Fill the casing to the filler plug and fit the plug tight.
  air-leak:
    as: {piece}
""")


_RIGHT = {"bench.yaml": _SHARED, "no-flow.yaml": _procedure("no-flow", "suction-leak")}

FAILING = {"no-prime.yaml": _procedure("no-prime", "suction-leek"), **_RIGHT}

MENDED = {"no-prime.yaml": _procedure("no-prime", "suction-leak"), **_RIGHT}
