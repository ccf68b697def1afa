"""Turning a procedure into a problem of choosing checks."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping

from pullcord.analysis.needs import Needs, minutes_of, read_needs
from pullcord.analysis.odds import Odds
from pullcord.analysis.problem import Act, Problem, Question
from pullcord.analysis.table import Table
from pullcord.analysis.telling import Group, answers_of, told_apart
from pullcord.analysis.tree import Tree


def read_problem(tree: Tree, table: Table, odds: Odds, undoable: Collection[str] = ()) -> Problem:
    """Return the problem a procedure poses to someone who cannot do some of its steps."""
    needs = read_needs(tree)
    barred = needs.impossible | {
        step for step in tree.order if not {step, *needs.before[step]}.isdisjoint(undoable)
    }
    asked = {
        check: row
        for check, row in table.items()
        if check not in barred and barred.isdisjoint(needs.longest[f"step:{check}"])
    }
    outcomes = told_apart(asked, tree.outcomes)
    bits = _done_bits(tree, asked, needs, outcomes)
    return Problem(
        outcomes=outcomes,
        shares=tuple(sum(odds.shares[name] for name in group) for group in outcomes),
        tails=tuple(_longest_tail(tree, needs, group) for group in outcomes),
        questions=tuple(_question(tree, table, needs, outcomes, bits, check) for check in asked),
        acts=tuple(
            Act(bits[step], step, tree.procedure.steps[step].minutes, tree.asks(step))
            for step in tree.order
            if step in bits
        ),
        onward={
            came: (node, actions)
            for came, (node, actions) in needs.onward.items()
            if node.removeprefix("step:") not in barred and barred.isdisjoint(actions)
        },
    )


def _done_bits(
    tree: Tree, asked: Table, needs: Needs, outcomes: tuple[Group, ...]
) -> dict[str, int]:
    """Return a bit for each step whose having been done makes a difference."""
    needed = frozenset[str]().union(*(needs.before[check] for check in asked))
    loose = {
        check
        for check, row in asked.items()
        if any(len(answers_of(row, group)) > 1 for group in outcomes)
    }
    marked = [step for step in tree.order if step in needed | loose or not tree.asks(step)]
    return {step: 1 << place for place, step in enumerate(marked)}


def _question(
    tree: Tree,
    table: Table,
    needs: Needs,
    outcomes: tuple[Group, ...],
    bits: Mapping[str, int],
    check: str,
) -> Question:
    given = [answers_of(table[check], group) for group in outcomes]
    loose = {1 << place: len(ones) for place, ones in enumerate(given) if len(ones) > 1}
    masks = {
        way.answer: _mask(not ones or way.answer in ones for ones in given)
        for way in tree.ways[check]
    }
    return Question(
        name=check,
        minutes=tree.procedure.steps[check].minutes,
        lead_in=needs.longest[f"step:{check}"],
        is_free=tree.procedure.steps[check].after is not None,
        answers=tuple((answer, mask) for answer, mask in masks.items() if mask),
        known=_mask(bool(ones) for ones in given),
        loose=loose,
        needs=sum(bits[step] for step in needs.before[check]),
        fence=sum(bits.get(step, 0) for step in needs.fences[check]),
        mark=bits.get(check, 0),
        heard=bits[check] << len(tree.order) if loose else 0,
    )


def _longest_tail(tree: Tree, needs: Needs, group: Group) -> tuple[str, ...]:
    tails = [needs.longest[outcome] for outcome in group]
    return max(tails, key=lambda tail: minutes_of(tree, tail))


def _mask(flags: Iterable[bool]) -> int:
    return sum(1 << place for place, flag in enumerate(flags) if flag)
