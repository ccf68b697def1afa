"""One thing that is not as it was, as plain data for whoever says it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

State = Literal["added", "removed", "changed"]


class Part(StrEnum):
    """What a change is about, in the order in which it is told."""

    CAUTIONS = "cautions"
    PATHS = "paths"
    STEPS = "steps"
    CAUSES = "causes"
    WHOLE = "whole"
    VALUES = "values"
    PLUGS = "plugs"
    TIME = "time"


@dataclass(frozen=True)
class Change:
    """One change."""

    part: Part
    at: str
    """The step, cause, value or pin it is about, by its new name; "" for the file as a whole."""
    what: str
    """What about it, such as `do`, `answer` or `hazard`: a key of the file where there is one."""
    old: str
    """How it was; "" when it was not there."""
    new: str
    """How it is; "" when it is gone."""
    detail: str = ""
    """Which one, where there are several: the answer, the hazard."""


@dataclass(frozen=True)
class Difference:
    """Everything that changed about one procedure or machine sheet."""

    kind: Literal["procedure", "machine"]
    name: str
    """Its new name, or the one it had when it is gone."""
    title: str
    state: State
    changes: tuple[Change, ...] = ()
    """In the order of their parts; empty when the whole file is new or gone."""
    old_name: str = ""
    """The name it had, when that is another."""


def changed(
    part: Part, at: str, what: str, old: str, new: str, detail: str = ""
) -> Iterator[Change]:
    """Yield the change, if there is one."""
    if old != new:
        yield Change(part, at, what, old, new, detail)


def changed_each(
    part: Part, at: str, what: str, old: Mapping[str, str], new: Mapping[str, str]
) -> Iterator[Change]:
    """Yield a change for every key whose text differs: those of the new first, in its order."""
    for key in (*new, *(key for key in old if key not in new)):
        yield from changed(part, at, what, old.get(key, ""), new.get(key, ""), key)


def listed_words(words: Iterable[object]) -> str:
    """Return words in a row, as they would be read."""
    return ", ".join(map(str, words))
