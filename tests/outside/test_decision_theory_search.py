"""The search for the quickest plan, against trying every plan there is."""

from __future__ import annotations

from math import inf

import pytest
from hypothesis import assume, given, settings

from pullcord.analysis.arrivals import read_arrivals
from pullcord.analysis.cost import read_cost
from pullcord.analysis.needs import Needs, minutes_of, read_needs
from pullcord.analysis.optimal import find_optimum
from pullcord.analysis.plan import walk_plan
from pullcord.analysis.problem import read_problem
from pullcord.analysis.table import Origin, Table
from pullcord.analysis.tree import Tree
from pullcord.model.procedure import Procedure
from tests.analysis.making import procedures, read_all, sorting_trees

Mass = dict[str, float]
"""Probability by outcome."""


def parts_of(tree: Tree, table: Table, check: str, mass: Mass) -> list[Mass]:
    """Return what each answer that can be given leaves, with its probability."""
    row = table[check]
    parts = [
        {
            name: weight * row[name].likelihood(way.answer)
            for name, weight in mass.items()
            if way.answer in row[name].answers
        }
        for way in tree.ways[check]
    ]
    return [part for part in parts if part]


def changes(tree: Tree, table: Table, check: str, mass: Mass) -> bool:
    """Say whether some answer leaves fewer outcomes; an unknown outcome may give any answer."""
    return any(len(part) < len(mass) for part in parts_of(tree, table, check, mass))


def try_every_plan(
    tree: Tree, table: Table, needs: Needs, mass: Mass, done: frozenset[str]
) -> float:
    """Return the least minutes times probability, with no bounds, sets as bits, or memory."""
    if len(mass) == 1:
        ((outcome, weight),) = mass.items()
        return weight * minutes_of(tree, needs.lead_ins[outcome])
    best = inf
    for check in tree.checks:
        missing = needs.before[check] - done
        left = parts_of(tree, table, check, mass)
        if (
            check in done
            or check in needs.impossible
            or any(table[check][outcome].origin is Origin.UNKNOWN for outcome in mass)
            or any(changes(tree, table, step, mass) for step in missing if tree.asks(step))
            or (done | missing) & needs.fences[check]
            or not changes(tree, table, check, mass)
        ):
            continue
        steps = (*missing, *needs.lead_ins[f"step:{check}"], check)
        cost = minutes_of(tree, steps) * sum(mass.values())
        after = done | missing | {check}
        for part in left:
            if cost >= best:
                break
            cost += try_every_plan(tree, table, needs, part, after)
        best = min(best, cost)
    return best


def check_against_every_plan(procedure: Procedure) -> None:
    """Compare the search, run to its end and cut short, with the best of all plans."""
    tree, table, odds = read_all(procedure)
    problem = read_problem(tree, table, odds)
    assume(len(problem.outcomes) == len(tree.outcomes) > 1)
    best = try_every_plan(tree, table, read_needs(tree), dict(odds.shares), frozenset())
    found = find_optimum(problem, looks=10**6)
    assert found.minutes == pytest.approx(best)
    assert found.is_proven == (best < inf)
    cut_short = find_optimum(problem, looks=3)
    assert cut_short.at_least <= best + 1e-6
    assert cut_short.minutes >= best - 1e-6


@given(procedures())
@settings(max_examples=60, deadline=None, print_blob=True)
def test_no_plan_is_quicker_in_any_procedure(procedure: Procedure) -> None:
    """With ways that join again, needs and actions, the plan found costs what the best costs."""
    check_against_every_plan(procedure)


@given(sorting_trees())
@settings(max_examples=60, deadline=None, print_blob=True)
def test_no_plan_is_quicker_in_a_sorting_tree(procedure: Procedure) -> None:
    """With up to six causes and what each check tells of others, the same holds."""
    check_against_every_plan(procedure)


@given(procedures(extras=False))
@settings(max_examples=60, deadline=None, print_blob=True)
def test_the_author_is_never_quicker(procedure: Procedure) -> None:
    """The plan found needs no more minutes than the procedure as written, even cut short."""
    tree, table, odds = read_all(procedure)
    written = read_cost(tree, read_arrivals(tree, table, odds)).minutes
    assert written is not None
    for looks in (1, 10**6):
        found = find_optimum(read_problem(tree, table, odds), looks=looks)
        assert found.minutes <= written.mean + 1e-6
        assert found.plan is not None


@given(sorting_trees())
@settings(max_examples=40, deadline=None, print_blob=True)
def test_a_plan_costs_what_is_said(procedure: Procedure) -> None:
    """Walking the plan found to every end gives its mean minutes and ends for sure."""
    tree, table, odds = read_all(procedure)
    problem = read_problem(tree, table, odds)
    found = find_optimum(problem)
    assert found.plan is not None
    ends = walk_plan(problem, found.plan)
    assert sum(end.share for end in ends) == pytest.approx(1)
    assert sum(end.share * end.minutes for end in ends) == pytest.approx(found.minutes)
