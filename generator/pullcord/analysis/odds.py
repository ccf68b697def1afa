"""How likely each outcome is before anything is checked, and where that comes from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from statistics import fmean
from typing import Literal

from pullcord.analysis.tree import Tree, is_cause

OWN_LOG = "from this shop's own log"
NO_SOURCE = "no source given"
TAKEN_AS_AVERAGE = "not given: taken as an average cause"
ALL_EQUAL = "none given: all taken as equally likely"


@dataclass(frozen=True)
class Odds:
    """The share of each outcome, with its origin."""

    shares: Mapping[str, float]
    """By outcome; they sum to 1. Several outcomes that are no cause share evenly."""
    basis: Literal["given", "partly given", "equal"]
    """Whether the author gave odds for all causes, for some, or for none."""
    sources: Mapping[str, str]
    """By outcome: where its share comes from, in words to print."""
    jobs: int = 0
    """How many finished jobs of this shop have been counted in."""

    @property
    def something_else(self) -> float:
        """Return the share of all outcomes that are none of the causes."""
        return sum(share for outcome, share in self.shares.items() if not is_cause(outcome))


def read_odds(tree: Tree) -> Odds:
    """Return the outcomes' shares from the odds in the procedure.

    A cause without odds is taken as an average one. All that is none of the causes (hand-overs
    and `done`) has together the procedure's `other-odds`, or else those of one average cause.
    """
    causes = tree.procedure.causes
    names = [outcome.removeprefix("cause:") for outcome in tree.outcomes if is_cause(outcome)]
    given = [odds for name in names if (odds := causes[name].odds) is not None]
    average = fmean(given) if given else 1.0
    weights = {f"cause:{name}": causes[name].odds or average for name in names}
    others = [outcome for outcome in tree.outcomes if not is_cause(outcome)]
    other_odds = tree.procedure.other_odds
    all_others = average if other_odds is None or not names else other_odds
    weights |= {outcome: all_others / len(others) for outcome in others}
    return Odds(
        shares=normalised(weights),
        basis="equal" if not given else "given" if len(given) == len(names) else "partly given",
        sources={outcome: _source(tree, outcome, bool(given)) for outcome in weights},
    )


def update_odds(odds: Odds, counts: Mapping[str, int], prior_jobs: float | None = None) -> Odds:
    """Return the odds after finished jobs: the mean of the Dirichlet distribution.

    `counts` says, by outcome, in how many jobs it was the one; outcomes the procedure does not
    have are not counted. The odds so far weigh as much as `prior_jobs` jobs, by default as many as
    there are outcomes. With equal odds that is Laplace's rule of succession, (n + 1) / (N + k).
    """
    counted = {outcome: counts.get(outcome, 0) for outcome in odds.shares}
    jobs = sum(counted.values())
    if not jobs:
        return odds
    strength = len(odds.shares) if prior_jobs is None else prior_jobs
    weights = {name: strength * share + counted[name] for name, share in odds.shares.items()}
    note = f"{OWN_LOG} ({jobs} {'job' if jobs == 1 else 'jobs'})"
    sources = {outcome: f"{source}; {note}" for outcome, source in odds.sources.items()}
    return replace(odds, shares=normalised(weights), sources=sources, jobs=odds.jobs + jobs)


def normalised(weights: Mapping[str, float]) -> dict[str, float]:
    """Return weights scaled so that they sum to 1; all equal when every one is nothing."""
    total = sum(weights.values())
    if not total:
        return dict.fromkeys(weights, 1 / len(weights)) if weights else {}
    return {name: weight / total for name, weight in weights.items()}


def _source(tree: Tree, outcome: str, any_given: bool) -> str:
    if not any_given:
        return ALL_EQUAL
    if not is_cause(outcome):
        return NO_SOURCE if tree.procedure.other_odds is not None else TAKEN_AS_AVERAGE
    cause = tree.procedure.causes[outcome.removeprefix("cause:")]
    return cause.odds_from or NO_SOURCE if cause.odds is not None else TAKEN_AS_AVERAGE
