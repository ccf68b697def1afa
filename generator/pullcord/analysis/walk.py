"""Walking a procedure in which one check has been asked earlier than it was written."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import inf
from typing import NamedTuple

from pullcord.analysis.needs import Needs, minutes_of
from pullcord.analysis.table import Table
from pullcord.analysis.tree import Tree

Minutes = Mapping[str, float]
"""Mean minutes from some place to an end, by outcome."""


class Spot(NamedTuple):
    """Where a walk is."""

    node: str
    """The graph node it has come to."""
    possible: frozenset[str]
    """The outcomes still possible."""
    done: frozenset[str]
    """Actions done."""
    given: tuple[str, str] = ("", "")
    """The check that was asked early, and its answer."""


class Course:
    """How a walk goes on from a spot: as written, but for what is known or done already.

    A check whose answer is known is passed over, an action is not done twice, and the walk ends
    with the outcome's tail once a single one is left.
    """

    def __init__(self, tree: Tree, table: Table, needs: Needs, kept: frozenset[str]) -> None:
        """Take over the procedure; checks in `kept` are never passed over."""
        self._tree = tree
        self._table = table
        self._needs = needs
        self._kept = kept
        self._known: dict[Spot, Minutes] = {}

    def minutes_asking(self, moved: str, spot: Spot) -> Minutes:
        """Return the minutes when a check is asked at a spot and the walk then goes on there.

        They are infinite where a check would come after an action that forbids it.
        """
        names, after = self._ask(moved, spot)
        own = minutes_of(self._tree, names)
        return self._added(own, moved, spot.possible, after)

    def orders_asking(self, moved: str, spot: Spot) -> Iterator[tuple[str, ...]]:
        """Yield every order of steps that can follow, the outcome's graph node last."""
        names, after = self._ask(moved, spot)
        for following in after.values():
            for order in self._orders(following):
                yield (*names, *order)

    def _ask(self, moved: str, spot: Spot) -> tuple[tuple[str, ...], dict[str, Spot]]:
        before = self._needs.before[moved]
        actions = tuple(step for step in self._tree.order if step in before)
        acts = (*actions, *self._needs.longest[f"step:{moved}"])
        new = tuple(step for step in acts if step not in spot.done and not self._tree.asks(step))
        done = spot.done.union(new)
        after = {
            answer: Spot(spot.node, part, done, (moved, answer))
            for answer, part in self._parts(moved, spot.possible)
        }
        return (*new, moved), after

    def _minutes(self, spot: Spot) -> Minutes:
        known = self._known.get(spot)
        if known is None:
            names, at = self._pass_known(spot)
            own = minutes_of(self._tree, names)
            check = _unasked(at)
            if check is None:
                known = dict.fromkeys(at.possible, own)
            elif at.done & self._needs.fences[check]:
                known = dict.fromkeys(at.possible, inf)
            else:
                own += self._tree.procedure.steps[check].minutes
                known = self._added(own, check, at.possible, self._after(check, at))
            self._known[spot] = known
        return known

    def _orders(self, spot: Spot) -> Iterator[tuple[str, ...]]:
        names, at = self._pass_known(spot)
        check = _unasked(at)
        if check is None:
            yield (*names, at.node)
            return
        for following in self._after(check, at).values():
            for order in self._orders(following):
                yield (*names, check, *order)

    def _added(
        self, own: float, check: str, possible: frozenset[str], after: Mapping[str, Spot]
    ) -> Minutes:
        """Return minutes spent now plus the mean of those after each answer."""
        total = dict.fromkeys(possible, own)
        for answer, following in after.items():
            for name, minutes in self._minutes(following).items():
                total[name] += self._table[check][name].likelihood(answer) * minutes
        return total

    def _after(self, check: str, spot: Spot) -> dict[str, Spot]:
        onward = {way.answer: way.to for way in self._tree.ways[check]}
        return {
            answer: Spot(onward[answer], part, spot.done, spot.given)
            for answer, part in self._parts(check, spot.possible)
        }

    def _parts(self, check: str, possible: frozenset[str]) -> Iterator[tuple[str, frozenset[str]]]:
        row = self._table[check]
        for way in self._tree.ways[check]:
            part = frozenset(name for name in possible if way.answer in row[name].answers)
            if part:
                yield way.answer, part

    def _pass_known(self, spot: Spot) -> tuple[tuple[str, ...], Spot]:
        """Go on to the next check whose answer is not known yet, or to the end."""
        names: list[str] = []
        node, possible, done, given = spot
        while node.startswith("step:") and len(possible) > 1:
            step = node.removeprefix("step:")
            answer = ""
            if self._tree.asks(step):
                known = self._known_answer(step, spot)
                if known is None:
                    break
                answer = known
            elif step not in done:
                names.append(step)
            node = next(way.to for way in self._tree.ways[step] if way.answer == answer)
        if len(possible) == 1:
            (node,) = possible
            names += [step for step in self._needs.longest[node] if step not in done]
        return tuple(names), Spot(node, possible, done.union(names), given)

    def _known_answer(self, step: str, spot: Spot) -> str | None:
        check, given = spot.given
        if step == check:
            return given
        row = self._table[step]
        answers = {answer for name in spot.possible for answer in row[name].answers}
        return answers.pop() if len(answers) == 1 and step not in self._kept else None


def _unasked(spot: Spot) -> str | None:
    """Return the check a walk has come to, if it has not ended."""
    is_check = spot.node.startswith("step:")
    return spot.node.removeprefix("step:") if is_check else None
