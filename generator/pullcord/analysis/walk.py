"""Walking a procedure in which one check has been asked earlier than it was written."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import inf

from pullcord.analysis.needs import Needs, minutes_of
from pullcord.analysis.table import Table, taking
from pullcord.analysis.tree import Tree


@dataclass(frozen=True)
class Walk:
    """Where a walk is, and what lies behind it since the change."""

    node: str
    """The graph node it has come to."""
    mass: Mapping[str, float]
    """Probability by outcome that is still possible."""
    answers: Mapping[str, str]
    """Answers by check, of those asked early."""
    done: frozenset[str]
    """Steps done, also before the change."""
    minutes: float = 0.0
    order: tuple[str, ...] = ()
    """Steps done since the change, in order."""

    def doing(self, tree: Tree, steps: tuple[str, ...]) -> Walk:
        """Return the walk after some steps; those done already are not done again."""
        new = tuple(step for step in steps if step not in self.done)
        return replace(
            self,
            done=self.done.union(new),
            minutes=self.minutes + minutes_of(tree, new),
            order=self.order + new,
        )


@dataclass(frozen=True)
class Course:
    """What decides how a changed walk goes on."""

    tree: Tree
    table: Table
    needs: Needs
    kept: frozenset[str]
    """Checks that are never skipped."""

    def ask_first(self, moved: str, walk: Walk) -> Iterator[Walk]:
        """Yield every end of a walk on which a check is asked here, and then all as written.

        An end that asks a check after an action that forbids it has infinite minutes.
        """
        before = self.needs.before[moved]
        actions = tuple(step for step in self.tree.order if step in before)
        lead_in = self.needs.longest[f"step:{moved}"]
        walk = walk.doing(self.tree, (*actions, *lead_in, moved))
        for way in self.tree.ways[moved]:
            part = taking(self.table, moved, way.answer, walk.mass)
            if part:
                answers = {**walk.answers, moved: way.answer}
                yield from self._go_on(replace(walk, mass=part, answers=answers))

    def _go_on(self, walk: Walk) -> Iterator[Walk]:
        walk = self._pass_known(walk)
        step = walk.node.removeprefix("step:")
        if step == walk.node:
            yield walk
        elif walk.done & self.needs.fences[step]:
            yield replace(walk, minutes=inf)
        else:
            walk = walk.doing(self.tree, (step,))
            for way in self.tree.ways[step]:
                part = taking(self.table, step, way.answer, walk.mass)
                if part:
                    yield from self._go_on(replace(walk, node=way.to, mass=part))

    def _pass_known(self, walk: Walk) -> Walk:
        """Go on to the next check whose answer is not known yet, or to the end."""
        while walk.node.startswith("step:") and len(walk.mass) > 1:
            step = walk.node.removeprefix("step:")
            answer = self._known_answer(step, walk) if self.tree.asks(step) else ""
            if answer is None:
                return walk
            if not self.tree.asks(step):
                walk = walk.doing(self.tree, (step,))
            onward = next(way.to for way in self.tree.ways[step] if way.answer == answer)
            walk = replace(walk, node=onward)
        if len(walk.mass) == 1:
            (outcome,) = walk.mass
            walk = replace(walk, node=outcome).doing(self.tree, self.needs.longest[outcome])
        return walk

    def _known_answer(self, step: str, walk: Walk) -> str | None:
        if step in walk.answers:
            return walk.answers[step]
        row = self.table[step]
        given = {answer for name in walk.mass for answer in row[name].answers}
        return given.pop() if len(given) == 1 and step not in self.kept else None
