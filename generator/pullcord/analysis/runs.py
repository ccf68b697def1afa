"""Runs of independent checks in a procedure, and the ratio rule applied to them.

In a run each check names causes of its own by all its answers but one, and that one goes straight
on to the next check. Nothing else leads into the middle of a run. An action between two checks ends
the run, unless the check behind it says with `after:` what it needs. That a part which is sound
passes its check, whatever else is wrong, is presumed throughout (`table.py`).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pullcord.analysis.changes import Written
from pullcord.analysis.order import NoRuleError, RunCheck, expected_minutes, ratio_order
from pullcord.analysis.sensitivity import ratio_margins
from pullcord.analysis.tree import Tree, Way, is_cause


@dataclass(frozen=True)
class Run:
    """A run as written, and its best order."""

    written: tuple[str, ...]
    """Its checks in the author's order."""
    best: tuple[str, ...]
    """In the order with the fewest minutes; as written when the ratio rule does not hold."""
    refused: str
    """Why the rule does not hold; empty when it does."""
    share: float
    """How likely a walk comes to the run."""
    minutes_written: float
    """Mean minutes spent in the run by walks that come to it."""
    minutes_best: float
    """The same in the best order."""
    odds: Mapping[str, float]
    """By check: how likely it names the cause, on arrival at the run."""
    margins: tuple[float, ...]
    """Between each two neighbours of the best order: how wrong their odds may be, as a factor."""


def read_runs(written: Written) -> tuple[Run, ...]:
    """Return every run of two or more checks, in the tree's order."""
    return tuple(_run(written, names) for names in _names_of_runs(written))


def _names_of_runs(written: Written) -> Iterator[tuple[str, ...]]:
    used: set[str] = set()
    for check in written.tree.checks:
        if check in used:
            continue
        names = [check]
        while (following := _next(written, names)) is not None:
            names.append(following)
        used.update(names)
        members = tuple(name for name in names if _is_member(written.tree, name))
        if len(members) > 1:
            yield members


def _next(written: Written, names: list[str]) -> str | None:
    """Return the check that continues a run, if one does."""
    tree = written.tree
    going, leaving = _parted(tree, names[-1])
    if not _is_member(tree, names[-1]) or not _leaving_for_good(tree, leaving, going[0]):
        return None
    node = going[0].to
    while node.startswith("step:") and len(written.above[node]) == 1:
        step = node.removeprefix("step:")
        if tree.asks(step):
            is_free = tree.procedure.steps[step].after is not None
            return step if is_free or not _acts_within(tree, names[0], step) else None
        node = tree.ways[step][0].to
    return None


def _parted(tree: Tree, check: str) -> tuple[list[Way], list[Way]]:
    """Return the ways of a check that go on looking, and those that name a cause."""
    going: list[Way] = []
    leaving: list[Way] = []
    for way in tree.ways[check]:
        ends = tree.ends[way.to]
        names_a_cause = len(ends) == 1 and all(is_cause(end) for end in ends)
        (leaving if names_a_cause else going).append(way)
    return going, leaving


def _is_member(tree: Tree, check: str) -> bool:
    going, leaving = _parted(tree, check)
    return len(going) == 1 and bool(leaving)


def _leaving_for_good(tree: Tree, leaving: list[Way], going: Way) -> bool:
    return all(tree.ends[way.to].isdisjoint(tree.ends[going.to]) for way in leaving)


def _acts_within(tree: Tree, first: str, step: str) -> tuple[str, ...]:
    """Return the actions between the first check of a run and another."""
    behind = {*tree.always_before[first], first}
    return tuple(
        name for name in tree.always_before[step] if name not in behind and not tree.asks(name)
    )


def _run(written: Written, names: tuple[str, ...]) -> Run:
    arriving = sum(written.arriving[f"step:{names[0]}"].values())
    checks = {name: _run_check(written, names, name, arriving) for name in names}
    best, refused = names, ""
    try:
        best = ratio_order(list(checks.values()))
    except NoRuleError as error:
        refused = str(error)
    ordered = [checks[name] for name in best]
    return Run(
        written=names,
        best=best,
        refused=refused,
        share=arriving,
        minutes_written=expected_minutes(list(checks.values())),
        minutes_best=expected_minutes(ordered),
        odds={name: check.share for name, check in checks.items()},
        margins=ratio_margins([(check.share, check.minutes) for check in ordered]),
    )


def _run_check(written: Written, names: tuple[str, ...], check: str, arriving: float) -> RunCheck:
    tree = written.tree
    _, leaving = _parted(tree, check)
    named = frozenset[str]().union(*(tree.ends[way.to] for way in leaving))
    here = written.arriving[f"step:{names[0]}"]
    needs = written.needs.before[check]
    acts = [act for act in _acts_within(tree, names[0], names[-1]) if act in needs]
    return RunCheck(
        name=check,
        share=sum(here.get(name, 0.0) for name in named) / arriving if arriving else 0.0,
        minutes=tree.procedure.steps[check].minutes,
        after=tuple(name for name in names if name in needs),
        openings={act: tree.procedure.steps[act].minutes for act in acts},
    )
