"""What is still possible at each step, and how likely: Bayes' rule along the ways of a procedure.

Worked out when the site is built, for every step; a page or a tablet only shows it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.analysis.bounds import entropy_bits
from pullcord.analysis.odds import Odds, normalised
from pullcord.analysis.table import Table, taking
from pullcord.analysis.tree import Tree

SAME = 1e-9
"""Shares closer than this are the same: only rounding lies between them."""

Shares = Mapping[str, float]
"""Probability by outcome, those that are possible only, in the order of the outcomes."""


@dataclass(frozen=True)
class AnswerBelief:
    """What one answer leaves."""

    answer: str
    """The answer; empty when the step asks nothing."""
    share: float
    """How likely this answer is, at this step: 0 to 1."""
    shares: Shares
    """What is still possible after it; empty when nothing known gives this answer."""


@dataclass(frozen=True)
class StepBelief:
    """What is possible on arrival at a step, over all ways that lead to it."""

    step: str
    reach: float
    """How likely a walk comes here: 0 to 1."""
    shares: Shares
    answers: tuple[AnswerBelief, ...]
    bits: float
    """How much asking tells on average; 0 for a check that tells nothing."""


def update(shares: Mapping[str, float], likelihood: Mapping[str, float]) -> dict[str, float]:
    """Return the shares after something was seen (Bayes' rule).

    `likelihood` is the probability of what was seen, by outcome. Outcomes that cannot be any more
    are left out; nothing is left when none of them can.
    """
    weights = {name: share * likelihood.get(name, 0.0) for name, share in shares.items()}
    possible = {name: weight for name, weight in weights.items() if weight > 0}
    return normalised(possible)


def read_flow(tree: Tree, table: Table, odds: Odds) -> dict[str, dict[str, float]]:
    """Return, by graph node, the probability of coming there, by outcome."""
    arriving: dict[str, dict[str, float]] = {node: {} for node in tree.ends}
    arriving[f"step:{tree.order[0]}"] = dict(odds.shares)
    for step in tree.order:
        for way in tree.ways[step]:
            onward = arriving[way.to]
            for outcome, mass in taking(table, step, way.answer, arriving[f"step:{step}"]).items():
                onward[outcome] = onward.get(outcome, 0.0) + mass
    return arriving


def read_beliefs(tree: Tree, table: Table, odds: Odds) -> dict[str, StepBelief]:
    """Return the belief at every step that can be reached, by its name, in the tree's order."""
    arriving = read_flow(tree, table, odds)
    return {step: _step_belief(tree, table, step, arriving[f"step:{step}"]) for step in tree.order}


def checks_that_tell_nothing(beliefs: Mapping[str, StepBelief]) -> tuple[str, ...]:
    """Return the checks that are reached and whose answer never changes what is believed."""
    return tuple(
        belief.step
        for belief in beliefs.values()
        if belief.reach > 0 and belief.answers[0].answer and not _changes(belief)
    )


def _changes(belief: StepBelief) -> bool:
    return any(
        abs(after.shares.get(outcome, 0.0) - share) > SAME
        for after in belief.answers
        if after.share > 0
        for outcome, share in belief.shares.items()
    )


def _step_belief(tree: Tree, table: Table, step: str, here: Mapping[str, float]) -> StepBelief:
    shares = normalised({name: here[name] for name in tree.outcomes if here.get(name)})
    answers = []
    for way in tree.ways[step]:
        taken = taking(table, step, way.answer, shares)
        possible = {name: mass for name, mass in taken.items() if mass > 0}
        answers.append(AnswerBelief(way.answer, sum(taken.values()), normalised(possible)))
    left = sum(after.share * entropy_bits(after.shares.values()) for after in answers)
    return StepBelief(
        step=step,
        reach=sum(here.values()),
        shares=shares,
        answers=tuple(answers),
        bits=max(entropy_bits(shares.values()) - left, 0.0),
    )
