"""Everything the analysis says of one procedure, as plain data for whoever prints it."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace

from pullcord.analysis.advice import Advice, first_allowed, presumptions
from pullcord.analysis.arrivals import curve_of, read_arrivals, steps_without_tools
from pullcord.analysis.belief import StepBelief, checks_that_tell_nothing, read_beliefs
from pullcord.analysis.bounds import entropy_bits, least_checks
from pullcord.analysis.changes import Change, read_written, saving_changes
from pullcord.analysis.cost import Cost, PartsCost, read_cost, read_parts_cost
from pullcord.analysis.guard import Guard
from pullcord.analysis.needs import needs_not_met
from pullcord.analysis.odds import Odds, read_odds, update_odds
from pullcord.analysis.optimal import DEFAULT_LOOKS, Optimum, find_optimum
from pullcord.analysis.plan import walk_plan
from pullcord.analysis.pose import read_problem
from pullcord.analysis.problem import Problem
from pullcord.analysis.runs import Run, read_runs
from pullcord.analysis.table import Table, read_table, without_presumptions
from pullcord.analysis.telling import Group
from pullcord.analysis.tree import Tree, read_tree
from pullcord.model.procedure import Procedure

MOST_EARLY = 5
"""How many of the best single changes the search begins from."""


@dataclass(frozen=True)
class Bounds:
    """What no order of checks can beat."""

    bits: float
    """Entropy of the outcomes: Shannon's bound on the mean number of yes-or-no questions."""
    checks: float
    """Huffman's bound on the mean number of checks, with as many answers as the widest has."""


@dataclass(frozen=True)
class Proposal:
    """A quicker way, and what it rests on."""

    optimum: Optimum
    """The best plan found, and what no plan can beat."""
    curve: tuple[tuple[float, float], ...]
    """Minutes and share settled by then, with that plan; empty without one."""
    presumptions: tuple[tuple[str, str], ...]
    """(Check, outcome) of which the plan only presumes what is answered."""
    advice: Advice | None
    """The one change that wins most; none is sought when a tool is missing."""


@dataclass(frozen=True)
class Review:
    """What is said of one procedure."""

    tree: Tree
    table: Table
    odds: Odds
    cost: Cost
    """As written."""
    parts: PartsCost
    beliefs: Mapping[str, StepBelief]
    """By step."""
    tell_nothing: tuple[str, ...]
    """Checks whose answer never changes what is believed."""
    never_told_apart: tuple[Group, ...]
    """Groups of outcomes that no check which can be done tells apart."""
    needs_not_met: tuple[tuple[str, str], ...]
    """(Step, step it says it comes after) where some way as written skips the latter."""
    undoable: tuple[str, ...]
    """Steps that need a tool which is not in hand."""
    bounds: Bounds
    sure: Proposal
    """What can be gained from what the branches and `tells:` say alone."""
    presuming: Proposal
    """What can be gained if parts that are sound pass every check; see its `presumptions`."""
    runs: tuple[Run, ...]

    @property
    def is_comparable(self) -> bool:
        """Say whether the procedure as written and the best plans do the same job.

        They do not when a walk as written gets stuck, ends at a wrong outcome or skips what a step
        needs, or when the plan may stop with several outcomes that nothing tells apart.
        """
        troubles = (self.undoable, self.cost.misled, self.needs_not_met, self.never_told_apart)
        return not any(troubles)


def review(
    procedure: Procedure,
    counts: Mapping[str, int] | None = None,
    tools: Collection[str] | None = None,
    guard: Guard | None = None,
    looks: int = DEFAULT_LOOKS,
) -> Review:
    """Return the review of a procedure; raise UnwalkableError when it cannot be walked.

    `counts` are finished jobs by outcome (its graph node), `tools` the names of those in hand
    (None: all), `guard` says which orders must not be proposed, `looks` how long to search.
    """
    tree = read_tree(procedure)
    table = read_table(tree)
    odds = update_odds(read_odds(tree), counts or {})
    undoable = frozenset[str]() if tools is None else steps_without_tools(procedure, tools)
    cost = read_cost(tree, read_arrivals(tree, table, odds, undoable))
    written = read_written(tree, table, odds)
    beliefs = read_beliefs(tree, table, odds)
    changes = [] if undoable else saving_changes(written)
    sure_table = without_presumptions(table)
    sure = read_problem(tree, sure_table, odds, undoable)
    presuming = read_problem(tree, table, odds, undoable)
    mean = cost.minutes.mean if cost.minutes else 0.0

    sure_changes = [change for change in changes if not change.presumed]
    sure_optimum = _search(sure, sure_changes, guard, looks)
    optimum = _search(presuming, changes, guard, looks)
    if sure.outcomes == presuming.outcomes and sure_optimum.minutes < optimum.minutes:
        # What is sure is allowed here too; a search cut short need not have come upon it.
        optimum = replace(sure_optimum, at_least=optimum.at_least)

    def propose(problem: Problem, optimum: Optimum, changes: list[Change]) -> Proposal:
        return Proposal(
            optimum=optimum,
            curve=_curve(problem, optimum),
            presumptions=presumptions(table, optimum.plan),
            advice=first_allowed(written, changes, mean, guard),
        )

    return Review(
        tree=tree,
        table=table,
        odds=odds,
        cost=cost,
        parts=read_parts_cost(tree, odds),
        beliefs=beliefs,
        tell_nothing=checks_that_tell_nothing(beliefs),
        never_told_apart=tuple(group for group in sure.outcomes if len(group) > 1),
        needs_not_met=needs_not_met(tree),
        undoable=tuple(step for step in tree.order if step in undoable),
        bounds=_bounds(sure),
        sure=propose(sure, sure_optimum, sure_changes),
        presuming=propose(presuming, optimum, changes),
        runs=read_runs(written),
    )


def _search(problem: Problem, changes: list[Change], guard: Guard | None, looks: int) -> Optimum:
    early = [(change.step, change.before) for change in changes[:MOST_EARLY] if change.before]
    return find_optimum(problem, guard, looks, early)


def _bounds(problem: Problem) -> Bounds:
    widest = max((len(question.answers) for question in problem.questions), default=2)
    return Bounds(
        bits=entropy_bits(problem.shares),
        checks=least_checks(problem.shares, max(widest, 2)),
    )


def _curve(problem: Problem, optimum: Optimum) -> tuple[tuple[float, float], ...]:
    if optimum.plan is None:
        return ()
    return curve_of((end.minutes, end.share) for end in walk_plan(problem, optimum.plan))
