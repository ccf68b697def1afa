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
from pullcord.analysis.pose import read_problem
from pullcord.analysis.table import Origin, Table
from pullcord.analysis.tree import Tree
from pullcord.model.procedure import Procedure
from tests.analysis.making import procedures, read_all, sorting_trees

Mass = dict[str, float]
"""Probability by outcome."""

Acts = tuple[str, ...]
"""Steps that ask nothing, in order."""


def parts_of(tree: Tree, table: Table, check: str, mass: Mass) -> list[tuple[str, Mass]]:
    """Return where each answer that can be given leads, and what it leaves possible."""
    row = table[check]
    parts = [
        (
            way.to,
            {
                name: weight * row[name].likelihood(way.answer)
                for name, weight in mass.items()
                if way.answer in row[name].answers
            },
        )
        for way in tree.ways[check]
    ]
    return [(to, part) for to, part in parts if part]


def changes(tree: Tree, table: Table, check: str, mass: Mass) -> bool:
    """Say whether some answer leaves fewer outcomes; an unknown outcome may give any answer."""
    return any(len(part) < len(mass) for _, part in parts_of(tree, table, check, mass))


def written_next(
    tree: Tree, table: Table, node: str, mass: Mass, acts: tuple[str, ...] = ()
) -> list[tuple[str, tuple[str, ...]]]:
    """Return where the author goes on from a node: the check that changes something, or the end."""
    step = node.removeprefix("step:")
    if step == node:
        return [(node, acts)]
    if step in read_needs(tree).impossible:
        return []
    if not tree.asks(step):
        return written_next(tree, table, tree.ways[step][0].to, mass, (*acts, step))
    if changes(tree, table, step, mass):
        return [(node, acts)]
    return [
        found
        for way in tree.ways[step]
        if all(way.answer in table[step][name].answers for name in mass)
        for found in written_next(tree, table, way.to, mass, acts)
    ]


def lead_in(needs: Needs, tree: Tree, node: str, nexts: list[tuple[str, tuple[str, ...]]]) -> Acts:
    """Return the actions on the way to a node: as written if that is shorter, or the longest."""
    step = node.removeprefix("step:")
    if step != node and tree.procedure.steps[step].after is not None:
        return ()
    before = needs.before.get(step, frozenset())
    written = [tuple(act for act in acts if act not in before) for to, acts in nexts if to == node]
    return min([*written, needs.longest[node]], key=lambda acts: minutes_of(tree, acts))


def try_every_plan(
    tree: Tree, table: Table, needs: Needs, mass: Mass, done: frozenset[str], came: str
) -> float:
    """Return the least minutes times probability, with no bounds, sets as bits, or memory."""
    nexts = written_next(tree, table, came, mass)
    if len(mass) == 1:
        ((outcome, weight),) = mass.items()
        return weight * minutes_of(tree, lead_in(needs, tree, outcome, nexts))
    best = inf
    for check in tree.checks:
        missing = needs.before[check] - done
        if (
            check in done
            or check in needs.impossible
            or any(table[check][outcome].origin is Origin.UNKNOWN for outcome in mass)
            or any(changes(tree, table, step, mass) for step in missing if tree.asks(step))
            or (done | missing) & needs.fences[check]
            or not changes(tree, table, check, mass)
        ):
            continue
        steps = (*missing, *lead_in(needs, tree, f"step:{check}", nexts), check)
        cost = minutes_of(tree, steps) * sum(mass.values())
        for way, part in parts_of(tree, table, check, mass):
            if cost >= best:
                break
            cost += try_every_plan(tree, table, needs, part, done.union(steps), way)
        best = min(best, cost)
    return best


def check_against_every_plan(procedure: Procedure) -> None:
    """Compare the search, run to its end and cut short, with the best of all plans."""
    tree, table, odds = read_all(procedure)
    problem = read_problem(tree, table, odds)
    assume(len(problem.outcomes) == len(tree.outcomes) > 1)
    start = f"step:{tree.order[0]}"
    needs = read_needs(tree)
    best = try_every_plan(tree, table, needs, dict(odds.shares), frozenset(), start)
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
