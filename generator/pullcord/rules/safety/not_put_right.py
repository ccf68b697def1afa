"""Whatever a step opens, fits, raises, pressurises or starts is put right on every way out.

A test lead that stays on, a fuel line that stays open or a machine left on a jack hurts whoever
comes next. For each step the ways to every end (a cause with its remedy, or `done`) are followed,
into other procedures too; where one of them does not put the thing right, it is printed. Petrol
that was open leaves vapour behind, which must be cleared as well.

A tyre's pressure and a starter spring's wind are meant to stay: they are only named in what to see
to before walking away.
"""

from __future__ import annotations

from collections.abc import Iterator

from pullcord.finding import Flaw
from pullcord.model.procedure import Library, Procedure
from pullcord.safety.ends import check_put_right

ID = "not-put-right"

FAILING = """
procedure: no-spark
title: No spark
symptom: The engine spins but there is no spark at the plug.
about: A made-up example.
start: lead
causes:
  coil: {title: The coil is open, remedy: Fit another coil.}
  switch: {title: The switch is stuck, remedy: Free the switch., takes-off: test-lead}
steps:
  lead:
    title: Fit a test lead
    do: Clip a test lead across the switch.
    fits: test-lead
    ask: Does the meter read open circuit now?
    answers: {open: cause coil, closed: cause switch}
"""

MENDED = FAILING.replace(
    "remedy: Fit another coil.", "remedy: Fit another coil., takes-off: test-lead"
)


def check(procedure: Procedure, library: Library | None = None) -> Iterator[Flaw]:
    """Yield a flaw for every step or remedy that leaves something behind on some way out."""
    yield from check_put_right(procedure, library)
