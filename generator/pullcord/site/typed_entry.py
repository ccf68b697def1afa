"""One log entry from what was typed at the command line."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from pullcord.errors import PullcordError
from pullcord.model.action import Action
from pullcord.model.base import kebab
from pullcord.model.job import Entry, Job
from pullcord.model.order import ranks_of
from pullcord.model.parse import parse_record
from pullcord.model.part_text import PartError, parse_part
from pullcord.model.shape import keys_of
from pullcord.model.taking import plain
from pullcord.source.decode import UNSEEN, name_of
from pullcord.source.item import Data, Figure, Value

LISTS = frozenset({*keys_of(Action), "drains", "fills", "shows", "unproves"})
"""Keys that take several words."""
PART = "part"
"""The option for one part; the key is `parts`."""
_FIGURES = ("date", "minutes", "celsius")


class TypedEntryError(PullcordError):
    """What was typed is no entry; nothing was written."""


def read_typed(
    given: Mapping[str, str | Sequence[str]], today: str
) -> Callable[[Job], Sequence[Data]]:
    """Return what makes one entry of options: text by key, lists of text for keys in `LISTS`.

    `today` is the date of an entry that names none. What is returned raises TypedEntryError with
    everything that is wrong with the words; whether the names in it are there is asked elsewhere.
    """

    def make(job: Job) -> Sequence[Data]:
        try:
            data = _data({"date": today, **given}, job)
        except PartError as error:
            raise TypedEntryError(f"nothing was written:\n  - --part: {error}") from None
        complaints = list(_complaints(data))
        if complaints:
            reasons = "".join(f"\n  - {sentence}" for sentence in complaints)
            raise TypedEntryError(f"nothing was written:{reasons}")
        return [data]

    return make


def _data(given: Mapping[str, Any], job: Job) -> Data:
    data: dict[str, Value] = {}
    for name, value in given.items():
        if name == PART:
            data["parts"] = [parse_part(text, job.wanted) for text in value]
        elif name in LISTS:
            words = [word for text in value for word in text.replace(",", " ").split()]
            data[name] = words[0] if len(words) == 1 else words
        else:
            data[name] = Figure(value.strip()) if name in _FIGURES else value
    ranks = ranks_of(Entry)
    return {key: data[key] for key in sorted(data, key=lambda key: ranks[key])}


def _complaints(data: Data) -> Sequence[str]:
    unseen = list(_unseen(plain(data), ""))
    if unseen:
        return unseen
    entry = parse_record(Entry, plain(data))
    if isinstance(entry, Entry):
        return ()
    return [f"{_option(flaw.at)}: {flaw.message}; {flaw.mend}" for flaw in entry]


def _option(place: Sequence[str | int]) -> str:
    key = kebab(str(place[0])) if place else ""
    return f"--{PART if key == 'parts' else key}"


def _unseen(value: Any, key: str) -> list[str]:
    if isinstance(value, dict):
        return [found for name, part in value.items() for found in _unseen(part, key or name)]
    if isinstance(value, list):
        return [found for part in value for found in _unseen(part, key)]
    hidden = UNSEEN.search(value)
    if hidden is None:
        return []
    return [f"{_option((key,))}: an invisible character is in it ({name_of(hidden[0])}): delete it"]
