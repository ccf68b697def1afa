"""Small pieces of the sentences a report is made of."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal

from pullcord.analysis.job.given import Given

CENT = Decimal("0.01")


def listed(names: Sequence[str]) -> str:
    """Return names as one speaks them: `a`, `a and b`, `a, b and c`."""
    most = ", ".join(names[:-1])
    return f"{most} and {names[-1]}" if most else "".join(names)


def money(amount: Decimal, currency: str = "") -> str:
    """Return an amount with two places, and the shop's own word for its money behind it."""
    return f"{amount.quantize(CENT)} {currency}".strip()


def titles_of(given: Given, stages: Iterable[str]) -> str:
    """Return the titles of stages, as one speaks them; a stage nobody knows keeps its name."""
    known = given.library.stages
    return listed([f"“{known[name].title if name in known else name}”" for name in stages])
