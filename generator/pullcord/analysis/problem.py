"""A procedure as a problem of choosing checks: small whole numbers for the search.

Sets of outcomes, and of things done, are bit masks. A check is only asked while its answer is known
for every outcome that is still possible, and once what it needs has been done (`needs.py`). A step
that cannot be done for want of a tool is left out, and so is whatever needs it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property, reduce
from operator import or_

from pullcord.analysis.needs import Came, Onward
from pullcord.analysis.telling import Group


@dataclass(frozen=True)
class Question:
    """One check."""

    name: str
    minutes: float
    """Its own."""
    lead_in: tuple[str, ...]
    """Actions done before it where the order is not as written (`needs.py`)."""
    is_free: bool
    """It says itself what it needs and has no lead-in anywhere."""
    answers: tuple[tuple[str, int], ...]
    """Each answer with the mask of outcomes that may give it, those that are unknown too."""
    known: int
    """Mask of the outcomes whose answer is known."""
    loose: Mapping[int, int]
    """By outcome's bit: how many answers it may give, where these are several."""
    needs: int
    """Mask of things done that it needs: actions are done on the way, checks must have been."""
    fence: int
    """Mask of things done after which it is not asked any more."""
    mark: int
    """Its own bit among things done; 0 when nothing depends on whether it was asked."""
    heard: int
    """Another bit, for an answer that was heeded; 0 when none of the outcomes may give several."""

    @cached_property
    def told_apart(self) -> tuple[int, ...]:
        """Return, by outcome, the mask of those that this check tells from it for sure."""
        places = range(self.known.bit_length())
        return tuple(self._told_from(1 << place) for place in places)

    def _told_from(self, bit: int) -> int:
        alike = [mask for _, mask in self.answers if mask & bit]
        return self.known & ~reduce(or_, alike) if alike and self.known & bit else 0

    def splits(self, possible: int) -> bool:
        """Say whether the answer can leave fewer of the possible outcomes."""
        for _, mask in self.answers:
            part = mask & possible
            if part and part != possible:
                return True
        return False

    def given_by_all(self, possible: int) -> tuple[str, ...]:
        """Return the answers that every possible outcome may give."""
        return tuple(answer for answer, mask in self.answers if not possible & ~mask)


@dataclass(frozen=True)
class Act:
    """A step that checks need."""

    bit: int
    """Its bit among things done."""
    name: str
    minutes: float
    is_check: bool


@dataclass(frozen=True)
class Problem:
    """Outcomes to be told apart, and the checks that can do it."""

    outcomes: tuple[Group, ...]
    """One bit each."""
    shares: tuple[float, ...]
    """Probability of each."""
    tails: tuple[tuple[str, ...], ...]
    """By outcome: actions still to be done where the order is not as written."""
    questions: tuple[Question, ...]
    acts: tuple[Act, ...]
    """Every action, and the checks that others need, in the order in which they are done."""
    onward: Mapping[Came, Onward]
    """Where the author goes on after each answer; left out where a step cannot be done."""

    @cached_property
    def everything(self) -> int:
        """Return the mask of all outcomes."""
        return (1 << len(self.outcomes)) - 1

    @cached_property
    def named(self) -> dict[str, Question]:
        """Return the questions by name."""
        return {question.name: question for question in self.questions}

    @cached_property
    def places(self) -> dict[str, int]:
        """Return the place of each outcome, by its graph node."""
        return {name: place for place, group in enumerate(self.outcomes) for name in group}

    @cached_property
    def least_tails(self) -> tuple[float, ...]:
        """Return, by outcome, the minutes of the shortest tail that is written for it."""
        least = [self.minutes(tail) for tail in self.tails]
        for node, actions in self.onward.values():
            if node in self.places:
                place = self.places[node]
                least[place] = min(least[place], self.minutes(actions))
        return tuple(least)

    @cached_property
    def _acts(self) -> dict[str, Act]:
        return {act.name: act for act in self.acts}

    @cached_property
    def has_lead_ins(self) -> bool:
        """Say whether any lead-in or tail costs other than elsewhere."""
        return any(actions for _, actions in self.onward.values())

    def lead_in_among(self, question: Question, actions: tuple[str, ...]) -> tuple[str, ...]:
        """Return those of some actions that are a lead-in to a question."""
        if question.is_free:
            return ()
        return tuple(name for name in actions if not self._acts[name].bit & question.needs)

    def minutes(self, actions: tuple[str, ...]) -> float:
        """Return the minutes of some actions together."""
        return sum(self._acts[name].minutes for name in actions)

    def bits(self, actions: tuple[str, ...]) -> int:
        """Return the mask of some actions among things done."""
        return sum(self._acts[name].bit for name in actions)

    @cached_property
    def fences(self) -> int:
        """Return the mask of actions that forbid some check once they are done."""
        return reduce(or_, (question.fence for question in self.questions), 0)

    @cached_property
    def _loose(self) -> tuple[tuple[int, int], ...]:
        loose = [question for question in self.questions if question.loose]
        return tuple((sum(q.loose), q.mark | q.heard) for q in loose)

    def loose_marks(self, possible: int) -> int:
        """Return the mask of questions that some of these outcomes may answer in several ways."""
        return sum(mark for outcomes, mark in self._loose if outcomes & possible)

    def acts_for(self, question: Question, possible: int, done: int) -> tuple[Act, ...] | None:
        """Return what has to be done before a question, in order; None when it cannot be asked.

        A check that must have been asked before counts as something to do when its answer leaves
        all possible outcomes possible; otherwise it has to be asked first, for its answer.
        """
        missing = question.needs & ~done
        if possible & ~question.known or (done | missing) & question.fence:
            return None
        acts = tuple(act for act in self.acts if act.bit & missing) if missing else ()
        asked = [self.named[act.name] for act in acts if act.is_check]
        return None if any(check.splits(possible) for check in asked) else acts


def is_told_apart(questions: Iterable[Question], place: int, possible: int) -> bool:
    """Say whether questions together tell one outcome from all others that are possible."""
    others = possible & ~(1 << place)
    for question in questions:
        if place < len(question.told_apart):
            others &= ~question.told_apart[place]
        if not others:
            return True
    return not others
