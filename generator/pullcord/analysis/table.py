"""Which answer each outcome gives at each check: what the procedure's own branches imply.

The model, in full:

- One thing is wrong (single fault), and a check answers the same whenever it is asked.
- BRANCH: where an outcome can still be reached, it gives an answer that can lead to it. Where
  several can (it stands at the end of several ways), each is taken to be equally likely. A cause
  that `tells` lists for a further answer gives that one too.
- TOLD: elsewhere, an outcome gives the answers that `tells` lists it for, equally likely.
- PRESUMED: elsewhere, where exactly one answer goes on looking and every other one names a cause,
  an outcome gives the answer that goes on: a part that is sound passes. This may be wrong when one
  fault mimics another, so whatever rests on it is listed with the advice.
- UNKNOWN: otherwise nothing is known. In a walk each answer is equally likely; the search for a
  better order never asks the check while such an outcome is still possible.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from pullcord.analysis.tree import Tree, Way, is_cause


class Origin(StrEnum):
    """Where a cell of the table comes from."""

    BRANCH = "branch"
    TOLD = "told"
    PRESUMED = "presumed"
    UNKNOWN = "unknown"


@dataclass(frozen=True)
class Cell:
    """What one outcome answers at one check."""

    answers: tuple[str, ...]
    """The answers it may give, each equally likely; never empty."""
    origin: Origin

    def likelihood(self, answer: str) -> float:
        """Return the probability of an answer, 0 to 1."""
        return 1 / len(self.answers) if answer in self.answers else 0.0


Table = Mapping[str, Mapping[str, Cell]]
"""Cells by check, then by outcome."""


def read_table(tree: Tree) -> Table:
    """Return the cell of every check that can be reached and every outcome."""
    return {check: _row(tree, check) for check in tree.checks}


def taking(table: Table, step: str, answer: str, mass: Mapping[str, float]) -> dict[str, float]:
    """Return the part of each outcome's probability that takes an answer at a step."""
    if step not in table:
        return dict(mass)
    row = table[step]
    shares = {name: share * row[name].likelihood(answer) for name, share in mass.items()}
    return {
        name: share for name, share in shares.items() if share > 0 or answer in row[name].answers
    }


def without_presumptions(table: Table) -> Table:
    """Return the table with every presumed answer unknown."""
    return {
        check: {
            outcome: Cell(cell.answers, Origin.UNKNOWN) if cell.origin is Origin.PRESUMED else cell
            for outcome, cell in row.items()
        }
        for check, row in table.items()
    }


def _row(tree: Tree, check: str) -> dict[str, Cell]:
    ways = tree.ways[check]
    going_on = tuple(way.answer for way in ways if not _names_a_cause(tree, way))
    return {outcome: _cell(tree, check, outcome, going_on) for outcome in tree.outcomes}


def _cell(tree: Tree, check: str, outcome: str, going_on: tuple[str, ...]) -> Cell:
    ways = tree.ways[check]
    tells = tree.procedure.steps[check].tells
    cause = outcome.removeprefix("cause:") if is_cause(outcome) else None
    told = {way.answer for way in ways if cause in tells.get(way.answer, ())}
    branch = {way.answer for way in ways if outcome in tree.ends[way.to]}
    if branch:
        return Cell(_in_order(ways, branch | told), Origin.BRANCH)
    if told:
        return Cell(_in_order(ways, told), Origin.TOLD)
    if len(going_on) == 1:
        return Cell(going_on, Origin.PRESUMED)
    return Cell(tuple(way.answer for way in ways), Origin.UNKNOWN)


def _names_a_cause(tree: Tree, way: Way) -> bool:
    ends = tree.ends[way.to]
    return len(ends) == 1 and all(is_cause(end) for end in ends)


def _in_order(ways: tuple[Way, ...], answers: set[str]) -> tuple[str, ...]:
    return tuple(way.answer for way in ways if way.answer in answers)
