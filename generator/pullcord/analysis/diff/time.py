"""What changed about the time: minutes and checks it takes to an answer."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pullcord.analysis.arrivals import read_arrivals
from pullcord.analysis.cost import read_cost
from pullcord.analysis.diff.change import Change, Part, changed_each
from pullcord.analysis.odds import read_odds
from pullcord.analysis.table import read_table
from pullcord.analysis.tree import UnwalkableError, read_tree
from pullcord.model.procedure import Procedure


def compare_time(old: Procedure, new: Procedure) -> Iterator[Change]:
    """Yield what differs of the minutes and checks to an answer, on average and at worst."""
    yield from changed_each(Part.TIME, "", "time", _figures(old), _figures(new))


def _figures(procedure: Procedure) -> Mapping[str, str]:
    try:
        tree = read_tree(procedure)
    except UnwalkableError:
        return {}
    table, odds = read_table(tree), read_odds(tree)
    cost = read_cost(tree, read_arrivals(tree, table, odds, frozenset()))
    spreads = {"minutes": cost.minutes, "checks": cost.checks}
    return {
        f"{unit}-{figure}": f"{getattr(spread, figure):.1f}".removesuffix(".0")
        for unit, spread in spreads.items()
        if spread
        for figure in ("mean", "worst")
    }
