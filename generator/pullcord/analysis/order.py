"""The best order for a run of independent checks: the most odds per minute first.

Each check of a run names its own causes and otherwise goes on to the next. Putting the check with
the greatest ratio of probability to cost first is then best (Heckerman, Breese and Rommelse,
Decision-theoretic troubleshooting, CACM 38(3), 1995; the same exchange argument as Smith, Various
optimizers for single-stage production, Naval Research Logistics Quarterly 3, 1956). Checks that
must come after one other check of the run are joined to it as Horn's rule says (Single-machine job
sequencing with treelike precedence ordering, SIAM J. Appl. Math. 23(2), 1972).

The rule does not hold once several checks share an opening cost, such as a cover that has to come
off first and then lies off for all of them, so such a run is refused (`optimal.py` can order it).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import inf

from pullcord.errors import PullcordError


class NoRuleError(PullcordError):
    """The ratio rule does not hold for this run."""


@dataclass(frozen=True)
class RunCheck:
    """One check of a run."""

    name: str
    share: float
    """Probability that it names the cause, out of 1 for all that may be wrong."""
    minutes: float
    """What it costs itself."""
    after: tuple[str, ...] = ()
    """Checks of the run that must come before it."""
    openings: Mapping[str, float] | None = None
    """Minutes of each action that must have been done before it, by name, once for all checks."""


@dataclass(frozen=True)
class _Block:
    """Checks that are done one right after another."""

    names: tuple[str, ...]
    share: float
    minutes: float

    @property
    def ratio(self) -> float:
        return self.share / self.minutes if self.minutes else inf


def ratio_order(checks: Sequence[RunCheck]) -> tuple[str, ...]:
    """Return the names in the order with the fewest expected minutes.

    Raises NoRuleError when two checks share an opening cost, when a check must come after several
    others, or when the needs go round in a circle.
    """
    openings = _own_openings(checks)
    names = {check.name for check in checks}
    parents = {check.name: _parent(check, names) for check in checks}
    blocks = {
        check.name: _Block((check.name,), check.share, check.minutes + openings[check.name])
        for check in checks
    }
    return _joined(blocks, parents)


def expected_minutes(checks: Sequence[RunCheck]) -> float:
    """Return the minutes a run takes on average in the order given, openings paid once.

    The sum of c_i (1 - p_1 - ... - p_(i-1)) over the checks.
    """
    left, total = 1.0, 0.0
    opened: set[str] = set()
    for check in checks:
        new = {name: cost for name, cost in (check.openings or {}).items() if name not in opened}
        opened |= set(new)
        total += left * (check.minutes + sum(new.values()))
        left -= check.share
    return total


def quickest_to_tell_apart(
    waiting: float, checks: Sequence[tuple[float, float]], droppable: Sequence[int]
) -> tuple[tuple[int, ...], float]:
    """Return the best order of a run that need not ask every check, and its cost.

    `waiting` is the probability of all outcomes together, `checks` pairs of the probability that a
    check sends away and its minutes. One of the checks in `droppable` may be left out, because the
    one outcome it names is what is left after all others. The cost is minutes times probability.
    """
    whole = sorted(range(len(checks)), key=lambda i: (-_ratio(*checks[i]), i))
    candidates = [whole, *([i for i in whole if i != left_out] for left_out in droppable)]
    priced = [(_cost(waiting, [checks[i] for i in one]), tuple(one)) for one in candidates]
    cost, best = min(priced)
    return best, cost


def _cost(waiting: float, checks: Sequence[tuple[float, float]]) -> float:
    total = 0.0
    for share, minutes in checks:
        total += waiting * minutes
        waiting -= share
    return total


def _ratio(share: float, minutes: float) -> float:
    return share / minutes if minutes else inf


def _own_openings(checks: Sequence[RunCheck]) -> dict[str, float]:
    seen: dict[str, str] = {}
    for check in checks:
        for opening, minutes in (check.openings or {}).items():
            if minutes and opening in seen:
                raise NoRuleError(
                    f"`{seen[opening]}` and `{check.name}` share the cost of `{opening}`: "
                    "their best order does not follow from odds and minutes alone."
                )
            seen[opening] = check.name
    return {check.name: sum((check.openings or {}).values()) for check in checks}


def _parent(check: RunCheck, names: set[str]) -> str | None:
    inside = [name for name in check.after if name in names]
    if len(inside) > 1:
        raise NoRuleError(f"`{check.name}` must come after several checks of the run.")
    return inside[0] if inside else None


def _joined(blocks: dict[str, _Block], parents: dict[str, str | None]) -> tuple[str, ...]:
    """Return the order; `blocks` and `parents` are used up."""
    done: tuple[str, ...] = ()
    while blocks:
        top = max(blocks, key=lambda name: blocks[name].ratio)
        best = blocks.pop(top)
        parent = parents[top]
        if parent is None:
            done += best.names
            heir = None
        else:
            before = blocks.get(parent)
            if before is None:
                raise NoRuleError("The checks of the run must each come after the other.")
            blocks[parent] = _Block(
                before.names + best.names, before.share + best.share, before.minutes + best.minutes
            )
            heir = parent
        parents |= {name: heir for name, over in parents.items() if over == top}
    return done
