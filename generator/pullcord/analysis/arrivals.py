"""Every way a walk can end, with its minutes, its checks and its probability."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from pullcord.analysis.odds import Odds
from pullcord.analysis.table import Table, taking
from pullcord.analysis.tree import Tree
from pullcord.model.procedure import Procedure

Spent = tuple[float, int]
"""Minutes and checks so far."""


@dataclass(frozen=True, order=True)
class Arrival:
    """All walks of one outcome that end at one place after the same minutes and checks."""

    minutes: float
    checks: int
    outcome: str
    """What is wrong."""
    end: str
    """The graph node the walk ends at: an outcome, or the step that cannot be done."""
    share: float
    """Probability of all this together, 0 to 1."""

    @property
    def is_stuck(self) -> bool:
        """Say whether the walk ends at a step for which a tool is missing."""
        return self.end.startswith("step:")

    @property
    def is_right(self) -> bool:
        """Say whether the walk ends at what is wrong."""
        return self.end == self.outcome


def steps_without_tools(procedure: Procedure, in_hand: Collection[str]) -> frozenset[str]:
    """Return the steps that need a tool which is not in hand."""
    return frozenset(
        name for name, step in procedure.steps.items() if not set(step.needs) <= set(in_hand)
    )


def read_arrivals(
    tree: Tree, table: Table, odds: Odds, undoable: Collection[str] = ()
) -> tuple[Arrival, ...]:
    """Return every arrival, the quickest first; minutes are counted to a hundredth.

    A walk that comes to a step in `undoable` ends there.
    """
    waiting: dict[str, dict[Spent, dict[str, float]]] = defaultdict(lambda: defaultdict(dict))
    waiting[f"step:{tree.order[0]}"][(0.0, 0)] = dict(odds.shares)
    for step in tree.order:
        if step in undoable:
            continue
        minutes, checks = tree.procedure.steps[step].minutes, int(tree.asks(step))
        for spent, mass in waiting.pop(f"step:{step}", {}).items():
            after = (round(spent[0] + minutes, 2), spent[1] + checks)
            for way in tree.ways[step]:
                _add(waiting[way.to][after], taking(table, step, way.answer, mass))
    return tuple(sorted(_arrived(waiting)))


def settled_curve(arrivals: Iterable[Arrival]) -> tuple[tuple[float, float], ...]:
    """Return the share of probability settled after each number of minutes at which it grows."""
    return curve_of((arrival.minutes, arrival.share) for arrival in arrivals if arrival.is_right)


def curve_of(pairs: Iterable[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """Return (minutes, share settled by then) from (minutes, share) pairs in any order."""
    at: dict[float, float] = defaultdict(float)
    for minutes, share in pairs:
        at[minutes] += share
    settled = 0.0
    points = []
    for minutes in sorted(at):
        settled += at[minutes]
        points.append((minutes, settled))
    return tuple(points)


def settled_by(curve: Iterable[tuple[float, float]], minutes: float) -> float:
    """Return the share of probability that a curve has settled after so many minutes."""
    return max((share for at, share in curve if at <= minutes), default=0.0)


def _add(into: dict[str, float], mass: Mapping[str, float]) -> None:
    for outcome, share in mass.items():
        into[outcome] = into.get(outcome, 0.0) + share


def _arrived(waiting: Mapping[str, Mapping[Spent, Mapping[str, float]]]) -> list[Arrival]:
    return [
        Arrival(minutes, checks, outcome, end, share)
        for end, by_spent in waiting.items()
        for (minutes, checks), mass in by_spent.items()
        for outcome, share in mass.items()
    ]
