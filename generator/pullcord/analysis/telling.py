"""Which outcomes a set of checks cannot tell apart."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from pullcord.analysis.table import Cell, Origin, Table

Group = tuple[str, ...]
"""Outcomes that no check tells apart, in the tree's order; mostly a single one."""


def answers_of(row: Mapping[str, Cell], group: Iterable[str]) -> frozenset[str]:
    """Return the answers that any of a group may give; none when one of them is unknown."""
    cells = [row[outcome] for outcome in group]
    if any(cell.origin is Origin.UNKNOWN for cell in cells):
        return frozenset()
    return frozenset(answer for cell in cells for answer in cell.answers)


def told_apart(table: Table, outcomes: Sequence[str]) -> tuple[Group, ...]:
    """Return all outcomes, those that no check in the table tells apart in one group.

    A check tells two groups apart when no answer may be given by both; one that says nothing of
    either does not count.
    """
    groups: list[Group] = [(outcome,) for outcome in outcomes]
    while (pair := _first_alike(table, groups)) is not None:
        one, other = pair
        joined = tuple(sorted((*groups[one], *groups[other]), key=outcomes.index))
        groups = [
            joined if place == one else group
            for place, group in enumerate(groups)
            if place != other
        ]
    return tuple(groups)


def never_told_apart(table: Table, outcomes: Sequence[str]) -> tuple[Group, ...]:
    """Return only the groups of outcomes that no check tells apart."""
    return tuple(group for group in told_apart(table, outcomes) if len(group) > 1)


def _first_alike(table: Table, groups: Sequence[Group]) -> tuple[int, int] | None:
    given = [[answers_of(row, group) for row in table.values()] for group in groups]
    for one, ones in enumerate(given):
        for other in range(one + 1, len(given)):
            pairs = zip(ones, given[other], strict=True)
            if not any(a and b and a.isdisjoint(b) for a, b in pairs):
                return one, other
    return None
