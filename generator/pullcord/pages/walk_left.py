"""What is left at each step and end of a walk: minutes, and the causes it may still be."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pullcord.analysis.belief import StepBelief, read_beliefs
from pullcord.analysis.odds import read_odds, update_odds
from pullcord.analysis.table import read_table
from pullcord.analysis.tree import Tree, is_cause, read_tree
from pullcord.model.procedure import Procedure


@dataclass(frozen=True)
class CauseLeft:
    """A cause that the steps ahead can still come to."""

    name: str
    share: float
    """How likely it is on arrival, 0 to 1, among all that it may be; 0 when nothing says."""


@dataclass(frozen=True)
class Left:
    """What is left at one node, its own step counted. Remedies are not counted."""

    least: float
    """Minutes of the shortest way to an end."""
    likely: float
    """Minutes on average, by the odds of the procedure and what this shop has found."""
    most: float
    """Minutes of the longest way."""
    causes: tuple[CauseLeft, ...]
    """The likeliest first; at a cause, that one alone."""


def read_left(procedure: Procedure, counts: Mapping[str, int] | None = None) -> dict[str, Left]:
    """Return what is left at every graph node that can be reached.

    `counts` are finished walks of this shop, by outcome. Raises UnwalkableError when the procedure
    cannot be walked to an end.
    """
    tree = read_tree(procedure)
    odds = update_odds(read_odds(tree), counts or {})
    beliefs = read_beliefs(tree, read_table(tree), odds)
    left = {node: Left(0, 0, 0, _causes(tree, node, {node: 1.0})) for node in tree.outcomes}
    for name in reversed(tree.order):
        left[f"step:{name}"] = _at_step(tree, beliefs[name], left)
    return left


def _at_step(tree: Tree, belief: StepBelief, left: Mapping[str, Left]) -> Left:
    ahead = [left[way.to] for way in tree.ways[belief.step]]
    shares = [after.share for after in belief.answers]
    # Nobody is expected here: all answers count alike.
    weights = shares if sum(shares) else [1 / len(shares)] * len(shares)
    own = tree.procedure.steps[belief.step].minutes
    return Left(
        least=own + min(after.least for after in ahead),
        likely=own + sum(w * after.likely for w, after in zip(weights, ahead, strict=True)),
        most=own + max(after.most for after in ahead),
        causes=_causes(tree, f"step:{belief.step}", belief.shares),
    )


def _causes(tree: Tree, node: str, shares: Mapping[str, float]) -> tuple[CauseLeft, ...]:
    reached = [end for end in tree.outcomes if end in tree.ends[node] and is_cause(end)]
    reached.sort(key=lambda end: -shares.get(end, 0.0))
    return tuple(CauseLeft(end.removeprefix("cause:"), shares.get(end, 0.0)) for end in reached)
