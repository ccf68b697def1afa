"""What a procedure may still find on this machine, by its odds and what the log has answered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.analysis.belief import update
from pullcord.analysis.job.counts import count_outcomes
from pullcord.analysis.job.given import Given
from pullcord.analysis.job.walks import Walk
from pullcord.analysis.odds import normalised, read_odds, update_odds
from pullcord.analysis.table import Table, read_table
from pullcord.analysis.tree import Tree, UnwalkableError, read_tree


@dataclass(frozen=True)
class Believed:
    """A procedure with what may still be found in it."""

    tree: Tree
    table: Table
    shares: Mapping[str, float]
    """Probability by outcome."""


def believed_in(given: Given, procedure: str, walk: Walk | None) -> Believed | None:
    """Return what may be found in a procedure after the answers of a walk.

    Before any answer the odds are the author's and those of the shop's other jobs. None when there
    is no such procedure, or when it cannot be walked.
    """
    record = given.library.procedures.get(procedure)
    try:
        tree = read_tree(record) if record else None
    except UnwalkableError:
        return None
    if tree is None or record is None:
        return None
    others = (job for name, job in given.library.jobs.items() if name != given.job.job)
    odds = update_odds(read_odds(tree), count_outcomes(others, record, given.library))
    table = read_table(tree)
    return Believed(tree, table, _after(tree, table, odds.shares, walk))


def _after(
    tree: Tree, table: Table, before: Mapping[str, float], walk: Walk | None
) -> Mapping[str, float]:
    shares = dict(before)
    for step, answer in walk.answers if walk else ():
        if step in table and answer:
            seen = {name: cell.likelihood(answer) for name, cell in table[step].items()}
            shares = update(shares, seen)
    at = walk.at if walk else None
    ahead = tree.ends.get(at, frozenset()) if at else frozenset(shares)
    possible = {name: share for name, share in shares.items() if name in ahead}
    # Answers that contradict one another leave nothing; what lies ahead is then as likely as ever.
    return normalised(possible or {name: before[name] for name in before if name in ahead})
