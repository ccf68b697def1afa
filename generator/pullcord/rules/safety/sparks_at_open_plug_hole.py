"""No cranking by an open plug hole while the ignition can spark.

Each turn blows a mist of petrol out of the open hole. A plug that sparks beside it lights the mist.
Either the hole is closed (leave a plug in it and test with another one), or the ignition is
disabled in an earlier step (`disables: ignition`).
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.conflicts import check_conflicts
from pullcord.safety.forbidden import FORBIDDEN

ID = "sparks-at-open-plug-hole"

FAILING = """
procedure: flooded
title: Flooded
symptom: The plug is wet after a few pulls.
about: A made-up example.
start: plug-out
causes:
  choke: {title: The choke sticks, remedy: Free the choke.}
steps:
  plug-out:
    title: Take the plug out
    do: Take the plug out.
    opens: plug-hole
    then: step blow
  blow:
    title: Blow it dry
    do: Pull the cord six times.
    makes: cranking
    then: step plug-in
  plug-in:
    title: Refit the plug
    do: Refit a dry plug, and put its lead back on.
    closes: plug-hole
    then: cause choke
"""

MENDED = (
    FAILING.replace("start: plug-out", "start: plug-lead")
    .replace(
        "  plug-out:",
        """  plug-lead:
    title: Ground the plug lead
    do: Take the lead off the plug and clip it to ground.
    disables: ignition
    then: step plug-out
  plug-out:""",
    )
    .replace("closes: plug-hole", "closes: plug-hole\n    enables: ignition")
)

MEND = (
    "disable the ignition (`disables: ignition`) or close the hole (`closes: plug-hole`) in a step "
    "before this one, on every way"
)


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every step or remedy where a spark may meet the spray of an open hole."""
    yield from check_conflicts(procedure, library, FORBIDDEN[ID], MEND)
