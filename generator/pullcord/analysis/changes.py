"""What a single change to a procedure would save: a check asked earlier, or left out.

How a walk goes on after a check that was asked early, see `walk.py`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pullcord.analysis.belief import read_flow
from pullcord.analysis.needs import Needs, read_needs
from pullcord.analysis.odds import Odds
from pullcord.analysis.table import Origin, Table, taking
from pullcord.analysis.tree import Tree
from pullcord.analysis.walk import Course, Spot
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

    def course(self) -> Course:
        """Return how a walk goes on once a check was asked early."""
        return Course(self.tree, self.table, self.needs, self.kept)


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
    # Rounding must not decide between changes that save the same; leaving out is the simpler one.
    return sorted(saving, key=lambda c: (-round(c.saves, 6), bool(c.before), c.step, c.before))


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
    course = written.course()
    below: dict[str, frozenset[str]] = {}
    for step in reversed(tree.order):
        onward = [way.to.removeprefix("step:") for way in tree.ways[step]]
        below[step] = frozenset(onward).union(*(below.get(name, ()) for name in onward))
    for check in tree.checks:
        for moved in tree.checks:
            if moved in below[check]:
                change = _asked_before(written, course, moved, check)
                if change is not None:
                    yield change


def _asked_before(written: Written, course: Course, moved: str, check: str) -> Change | None:
    place = _first_preparation(written, check)
    mass = written.arriving[f"step:{place}"]
    cells = written.table[moved]
    done = frozenset(written.tree.always_before[place])
    missing = written.needs.before[moved] - done
    if (
        any(cells[name].origin is Origin.UNKNOWN for name in mass)
        or any(written.tree.asks(step) for step in missing)
        or (done | missing) & written.needs.fences[moved]
    ):
        return None
    minutes = course.minutes_asking(moved, _spot(written, place))
    rest = written.rest[f"step:{place}"]
    saved = {name: weight * (rest[name] - minutes[name]) for name, weight in mass.items()}
    presumed = tuple(name for name in mass if cells[name].origin is Origin.PRESUMED)
    return _change(written, moved, check, saved, presumed)


def orders_after(written: Written, change: Change) -> Iterator[tuple[str, ...]]:
    """Yield every order of steps that a changed walk can take from the change on.

    The last item is the outcome's graph node. There is none for a check left out.
    """
    if change.before:
        yield from written.course().orders_asking(change.step, _spot(written, change.place))


def _spot(written: Written, place: str) -> Spot:
    done = frozenset(
        step for step in written.tree.always_before[place] if not written.tree.asks(step)
    )
    return Spot(f"step:{place}", frozenset(written.arriving[f"step:{place}"]), done)


def _change(
    written: Written,
    step: str,
    before: str,
    saved: Mapping[str, float],
    presumed: tuple[str, ...] = (),
) -> Change:
    shares = written.shares
    each = {name: gain / shares[name] for name, gain in saved.items() if shares[name]}
    place = _first_preparation(written, before) if before else step
    return Change(step, before, place, sum(saved.values()), each, presumed)


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
