"""Every shared step and cause is used by a procedure.

What nobody uses is not looked after: it grows old where no reader sees it. Use it, or delete it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pullcord.finding import Flaw
from pullcord.model.base import Record
from pullcord.model.procedure import Procedure
from pullcord.model.shared import Shared
from pullcord.rules.example import example

ID = "unused-piece"

_CAUSES = """\
causes:
  dry-casing:
    title: No water in the pump casing
    remedy: Fill the casing to the filler plug and fit the plug tight.
  air-leak:
    as: suction-leak
"""

_SHARED = """\
shared: bench
causes:
  suction-leak:
    title: Suction hose draws air
    remedy: Fit a new suction hose and tighten both clamps.
"""

_NEVER = """\
  seal-worn:
    title: Shaft seal worn
    remedy: Fit a new seal.
"""

FAILING = {"bench.yaml": _SHARED + _NEVER, "no-prime.yaml": example(_CAUSES)}

MENDED = {"bench.yaml": _SHARED, "no-prime.yaml": example(_CAUSES)}


def check(files: Mapping[str, Record]) -> Iterator[tuple[str, Flaw]]:
    """Yield a file and a flaw for every shared step or cause that no procedure names."""
    procedures = [record for record in files.values() if isinstance(record, Procedure)]
    used = {("steps", step.as_) for each in procedures for step in each.steps.values()}
    used |= {("causes", cause.as_) for each in procedures for cause in each.causes.values()}
    for file, record in files.items():
        if isinstance(record, Shared):
            for kind, name in _pieces(record):
                if (kind, name) not in used:
                    message = f"no procedure fills in from `{name}`"
                    yield file, Flaw((kind, name), message, f"write `as: {name}`, or delete it")


def _pieces(shared: Shared) -> Iterator[tuple[str, str]]:
    yield from (("steps", name) for name in shared.steps)
    yield from (("causes", name) for name in shared.causes)
