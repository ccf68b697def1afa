"""A step that runs the engine says so.

Exhaust kills without a smell, and belts, fans and chains catch sleeves. So a step or a remedy that
starts the engine or works beside it while it runs declares it: `starts: engine`, `makes: running`,
`stops: engine`. If the text only speaks of it, `near: moving-parts` is enough.

This looks for words and does not understand them; "do not start the engine" is let pass.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.rules.example import example
from pullcord.rules.speech import RUNNING, Topic, undeclared

ID = "running-undeclared"

FAILING = example(
    """\
steps:
  casing:
    title: Water in the casing
    do: Start the engine and look at the outlet.
    ask: What comes out?
    answers:
      bubbles: cause air-leak
      nothing: cause dry-casing
"""
)

MENDED = FAILING.replace("    ask:", "    near: moving-parts\n    ask:")


TOPIC = Topic(
    words=RUNNING,
    stems=re.compile(r"start|idl|\b(?:fir[ei]|r[ua]n(?!g)|warm|rev)"),
    declared_by={
        "starts": frozenset({"engine"}),
        "makes": frozenset({"running"}),
        "stops": frozenset({"engine"}),
        "near": frozenset({"moving-parts", "hot-parts"}),
    },
    message="`{}` speaks of a running engine, but nothing here declares it",
    mend="add `makes: running` or `starts: engine`; if it only speaks of it, `near: moving-parts`",
)


def check(procedure: Procedure, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every step and remedy that speaks of a running engine undeclared."""
    yield from undeclared(procedure, TOPIC)
