"""Where a procedure stands among the others: what it proves, what it is known by and taken for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pullcord.analysis.finder import SENSES, Index, index_signs, look_alikes
from pullcord.analysis.purpose import stages_proved_by
from pullcord.model.procedure import Library

MOST_ALIKE = 3
"""How many others a page names: more would be a list nobody compares."""


@dataclass(frozen=True)
class Alike:
    """Another procedure with some of the same signs."""

    name: str
    title: str
    shares: tuple[str, ...]


@dataclass(frozen=True)
class Standing:
    """What a procedure's page says of its place in the library; plain data, fit for a key."""

    stages: tuple[str, ...] = ()
    """Titles of the stages that a pass proves."""
    signs: tuple[tuple[str, tuple[str, ...]], ...] = ()
    """By sense, the senses without a sign left out."""
    alike: tuple[Alike, ...] = ()
    """What it is easily taken for, the most alike first."""


def standings(library: Library) -> Mapping[str, Standing]:
    """Return every procedure's place, by its name."""
    index = index_signs(library.procedures.values())
    return {name: _standing(library, index, name) for name in library.procedures}


def _standing(library: Library, index: Index, name: str) -> Standing:
    return Standing(
        stages=tuple(library.stages[each].title for each in stages_proved_by(library, name)),
        signs=tuple(_signs(library, name)),
        alike=tuple(
            Alike(
                match.procedure,
                library.procedures[match.procedure].title,
                tuple(sign.words for sign in match.shares),
            )
            for match in look_alikes(index, name, MOST_ALIKE)
        ),
    )


def _signs(library: Library, name: str) -> Iterator[tuple[str, tuple[str, ...]]]:
    signs = library.procedures[name].signs
    for sense in SENSES:
        if words := getattr(signs, sense):
            yield sense, words
