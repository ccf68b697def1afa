"""What a single change to a procedure would save: a check asked earlier, or left out.

When a check is asked earlier, the walk goes on as written from there, but a check whose answer is
known by then is skipped, an action is not done twice, and the walk ends when one outcome is left.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pullcord.analysis.belief import read_flow
from pullcord.analysis.needs import Needs, read_needs
from pullcord.analysis.odds import Odds
from pullcord.analysis.table import Origin, Table, taking
from pullcord.analysis.tree import Tree
from pullcord.analysis.walk import Course, Walk
from pullcord.model.action import Action

LEAST_MINUTES = 0.005
"""A change that saves less than this on average is not worth telling."""


@dataclass(frozen=True)
class Written:
    """A procedure as its author wrote it, and what remains to be done at each place."""

    tree: Tree
    table: Table
    needs: Needs
    shares: Mapping[str, float]
    """Probability by outcome."""
    arriving: Mapping[str, Mapping[str, float]]
    """By graph node: the probability of coming there, by outcome."""
    rest: Mapping[str, Mapping[str, float]]
    """By graph node: the mean minutes from there to an end, by outcome."""
    above: Mapping[str, tuple[str, ...]]
    """By graph node: the steps that lead straight to it."""
    kept: frozenset[str]
    """Checks that others must come after, so that they are never skipped."""


@dataclass(frozen=True)
class Change:
    """One change to the order."""

    step: str
    """The check that is moved or left out."""
    before: str
    """The check it is asked before; empty when it is left out."""
    place: str
    """The step the change comes before: the check, or the first of its preparations."""
    saves: float
    """Mean minutes saved over all walks."""
    saved: Mapping[str, float]
    """Mean minutes saved by outcome; negative where it costs time."""
    presumed: tuple[str, ...]
    """Outcomes of which it is only presumed what they answer at the moved check (`table.py`)."""
    orders: tuple[tuple[str, ...], ...]
    """Every order of steps a changed walk can take, the outcome last; none for a check left out."""


def read_written(tree: Tree, table: Table, odds: Odds) -> Written:
    """Return a procedure as written, ready to be changed."""
    steps = tree.procedure.steps
    return Written(
        tree=tree,
        table=table,
        needs=read_needs(tree),
        shares=odds.shares,
        arriving=read_flow(tree, table, odds),
        rest=_rest(tree, table),
        above=_above(tree),
        kept=frozenset(name for step in tree.order for name in steps[step].after or ()),
    )


def saving_changes(written: Written) -> list[Change]:
    """Return every single change that saves time, the one that saves most first."""
    found = [*_left_out(written), *_asked_earlier(written)]
    saving = [change for change in found if change.saves > LEAST_MINUTES]
    return sorted(saving, key=lambda change: (-change.saves, change.step, change.before))


def _left_out(written: Written) -> Iterator[Change]:
    """Yield each check that leads to the same place whatever is answered, and does nothing else."""
    tree = written.tree
    for check in tree.checks:
        step = tree.procedure.steps[check]
        has_effects = any(getattr(step, field) for field in Action.model_fields)
        is_idle = len({way.to for way in tree.ways[check]}) == 1
        if is_idle and not has_effects and check not in written.kept:
            here = written.arriving[f"step:{check}"]
            spent = {name: mass * step.minutes for name, mass in here.items()}
            yield _change(written, check, "", spent)


def _asked_earlier(written: Written) -> Iterator[Change]:
    tree = written.tree
    below: dict[str, frozenset[str]] = {}
    for step in reversed(tree.order):
        onward = [way.to.removeprefix("step:") for way in tree.ways[step]]
        below[step] = frozenset(onward).union(*(below.get(name, ()) for name in onward))
    for check in tree.checks:
        for moved in tree.checks:
            if moved in below[check]:
                change = _asked_before(written, moved, check)
                if change is not None:
                    yield change


def _asked_before(written: Written, moved: str, check: str) -> Change | None:
    place = _first_preparation(written, check)
    mass = written.arriving[f"step:{place}"]
    walk = Walk(f"step:{place}", mass, {}, frozenset(written.tree.always_before[place]))
    cells = written.table[moved]
    missing = written.needs.before[moved] - walk.done
    if (
        any(cells[name].origin is Origin.UNKNOWN for name in mass)
        or any(written.tree.asks(step) for step in missing)
        or (walk.done | missing) & written.needs.fences[moved]
    ):
        return None
    course = Course(written.tree, written.table, written.needs, written.kept)
    ends = list(course.ask_first(moved, walk))
    rest = written.rest[f"step:{place}"]
    saved = {name: weight * rest[name] for name, weight in mass.items()}
    for end in ends:
        for name, weight in end.mass.items():
            saved[name] -= weight * end.minutes
    presumed = tuple(name for name in mass if cells[name].origin is Origin.PRESUMED)
    orders = tuple(dict.fromkeys((*end.order, end.node) for end in ends))
    return _change(written, moved, check, saved, presumed, orders)


def _change(
    written: Written,
    step: str,
    before: str,
    saved: Mapping[str, float],
    presumed: tuple[str, ...] = (),
    orders: tuple[tuple[str, ...], ...] = (),
) -> Change:
    shares = written.shares
    each = {name: gain / shares[name] for name, gain in saved.items() if shares[name]}
    place = _first_preparation(written, before) if before else step
    return Change(step, before, place, sum(saved.values()), each, presumed, orders)


def _first_preparation(written: Written, check: str) -> str:
    """Return the first of the actions that lead to a check and nowhere else, or the check."""
    place = check
    while len(above := written.above[f"step:{place}"]) == 1 and not written.tree.asks(above[0]):
        place = above[0]
    return place


def _rest(tree: Tree, table: Table) -> dict[str, dict[str, float]]:
    nothing = dict.fromkeys(tree.outcomes, 0.0)
    rest: dict[str, dict[str, float]] = {}
    for step in reversed(tree.order):
        minutes = tree.procedure.steps[step].minutes
        here = dict.fromkeys(tree.outcomes, minutes)
        for way in tree.ways[step]:
            chances = taking(table, step, way.answer, dict.fromkeys(tree.outcomes, 1.0))
            for name, chance in chances.items():
                here[name] += chance * rest.get(way.to, nothing)[name]
        rest[f"step:{step}"] = here
    return rest


def _above(tree: Tree) -> dict[str, tuple[str, ...]]:
    above: dict[str, list[str]] = {node: [] for node in tree.ends}
    for step in tree.order:
        for way in tree.ways[step]:
            if step not in above[way.to]:
                above[way.to].append(step)
    return {node: tuple(steps) for node, steps in above.items()}
