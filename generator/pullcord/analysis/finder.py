"""From signs to procedures: what one sees, hears, smells or feels, and where it leads.

How much a sign counts is its specificity after K. Spärck Jones, "A statistical interpretation of
term specificity and its application in retrieval", Journal of Documentation 28 (1972) 11-21: a sign
that n of N procedures have weighs f(N) - f(n) + 1, where f(n) is the least whole number m with
n <= 2^m. So a rare sign counts for more, every sign counts for something, and all sums are whole.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from pullcord.model.procedure import Procedure

Sense = Literal["seen", "heard", "smelt", "felt"]
SENSES: tuple[Sense, ...] = ("seen", "heard", "smelt", "felt")
_SMALL = frozenset({"a", "an", "it", "the"})
_PLURAL_FROM = 4
"""Letters of the shortest word whose last `s` is taken for a plural: `plugs`, not `gas`."""


@dataclass(frozen=True)
class Sign:
    """One thing one may notice."""

    sense: Sense
    words: str
    """As the first procedure that has it says it."""
    procedures: tuple[str, ...]
    """Names of all that have it, in the order of the index."""
    weight: int
    """How much it counts: 1 and up, more for a rarer one."""


@dataclass(frozen=True)
class Index:
    """All signs of some procedures."""

    procedures: tuple[str, ...]
    """Names of the procedures that have a sign, in the order they were given."""
    signs: tuple[Sign, ...]
    """By sense, then in the order of the procedures."""


@dataclass(frozen=True)
class Match:
    """A procedure that has some of the signs picked."""

    procedure: str
    shares: tuple[Sign, ...]
    """The picked signs it has, in the order of the index: the reason why it is here."""
    score: int
    """Their weights together."""


def signs_of(procedure: Procedure) -> Iterator[tuple[Sense, str]]:
    """Yield a procedure's signs, each with its sense, in the order of the file."""
    for sense in SENSES:
        yield from ((sense, words) for words in getattr(procedure.signs, sense))


def same_sign(words: str) -> tuple[str, ...]:
    """Return what spellings of one sign have in common: no capitals, plurals or small words."""
    letters = "".join(c if c.isalnum() else " " for c in words.casefold().replace("'", ""))
    return tuple(_singular(word) for word in letters.split() if word not in _SMALL)


def index_signs(procedures: Iterable[Procedure]) -> Index:
    """Return the index of the procedures; those without a sign are not in it."""
    having: dict[tuple[Sense, tuple[str, ...]], dict[str, str]] = {}
    known: dict[str, None] = {}
    for procedure in procedures:
        for sense, words in signs_of(procedure):
            known[procedure.procedure] = None
            said = having.setdefault((sense, same_sign(words)), {})
            said.setdefault(procedure.procedure, words)
    signs = (
        Sign(sense, next(iter(said.values())), tuple(said), specificity(len(known), len(said)))
        for (sense, _), said in having.items()
    )
    return Index(tuple(known), tuple(sorted(signs, key=lambda sign: SENSES.index(sign.sense))))


def specificity(procedures: int, having: int) -> int:
    """Return how much a sign counts that `having` of all procedures have; `having` is 1 and up."""
    return (procedures - 1).bit_length() - (having - 1).bit_length() + 1


def rank(index: Index, picked: Collection[Sign], urgent: Collection[str]) -> tuple[Match, ...]:
    """Return every procedure that has a picked sign, the likeliest first.

    Those in `urgent` come before the others, whatever counts for these: they are seen to first.
    Then the weight of the shared signs decides, then their number, then the order of the index.
    """
    shares: dict[str, list[Sign]] = {name: [] for name in index.procedures}
    for sign in index.signs:
        if sign in picked:
            for name in sign.procedures:
                shares[name].append(sign)
    matches = (
        Match(name, tuple(signs), sum(sign.weight for sign in signs))
        for name, signs in shares.items()
        if signs
    )
    return tuple(
        sorted(
            matches,
            key=lambda match: (match.procedure not in urgent, -match.score, -len(match.shares)),
        )
    )


def telling_signs(index: Index, picked: Collection[Sign], most: int) -> tuple[Sign, ...]:
    """Return signs not picked that would tell the matches apart, the most telling first.

    A sign that k of m matches have tells k (m - k) pairs of them apart; it is best when half of
    them have it. Of two that tell as many apart, the rarer one goes first.
    """
    left = {match.procedure for match in rank(index, picked, ())}
    apart = {sign: _pairs(sign, left) for sign in index.signs if sign not in picked}
    useful = (sign for sign, pairs in apart.items() if pairs)
    return tuple(sorted(useful, key=lambda sign: (-apart[sign], -sign.weight))[:most])


def look_alikes(index: Index, procedure: str, most: int) -> tuple[Match, ...]:
    """Return the procedures that share signs with one, those with the weightiest shares first."""
    own = [sign for sign in index.signs if procedure in sign.procedures]
    others = (match for match in rank(index, own, ()) if match.procedure != procedure)
    return tuple(others)[:most]


def _pairs(sign: Sign, left: Collection[str]) -> int:
    having = sum(name in left for name in sign.procedures)
    return having * (len(left) - having)


def _singular(word: str) -> str:
    is_plural = len(word) >= _PLURAL_FROM and word[-1] == "s" and word[-2] not in "siu"
    return word[:-1] if is_plural else word
